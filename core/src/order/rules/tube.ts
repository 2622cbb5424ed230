/** [OR6] [OR7] [OR8] [OR9] [OR10] [OR11] [OR44] May this go down this lumen? Rules ask the lumen, not the device. */
import type { AccessDevice, DeviceKind, LumenUse, Problem, TipSite } from '../order.ts';
import { problem } from '../problem.ts';
import { isPostPyloric, lumenNamed, type Review, restsOn } from '../review.ts';

function lumens(access: AccessDevice): readonly Problem[] {
  const has = access.lumens.map((lumen) => lumen.name);
  const twice = [...new Set(has.filter((name, i) => has.indexOf(name) !== i))];
  const named = (['feedBy', 'medicineBy'] as const).flatMap((field) => {
    const lumen = access[field];
    return lumen === null || has.includes(lumen)
      ? []
      : [problem('order/no-such-lumen', ['access', field], { lumen, has, device: access.device })];
  });
  return [...named, ...twice.map((lumen) => problem('order/lumen-twice', ['access', 'lumens'], { lumen }))];
}

const USES = [
  ['feedBy', 'feed'],
  ['medicineBy', 'medicine'],
] as const satisfies readonly (readonly ['feedBy' | 'medicineBy', LumenUse])[];

function uses({ order }: Review, access: AccessDevice): readonly Problem[] {
  return USES.flatMap(([field, use]) => {
    const lumen = lumenNamed(order, access[field]);
    return lumen === null || lumen.uses.includes(use)
      ? []
      : [problem('order/lumen-not-for', ['access', field], { lumen: lumen.name, use, uses: lumen.uses })];
  });
}

const path = ['access', 'feedBy'] as const;

/** [OR8] Never by bolus beyond the stomach (S30, and every body that speaks of it), unless local policy allows it. */
function bolus({ order, feedLumen, local }: Review): readonly Problem[] {
  const byBolus = order.regimen?.kind === 'bolus' || order.method === 'syringe';
  if (!byBolus || !isPostPyloric(feedLumen)) return [];
  const key = 'jejunal.bolus-allowed';
  const allowed = local(key);
  const says = { lumen: feedLumen?.name, tip: feedLumen?.tip, device: order.access?.device };
  if (!allowed.known) return [problem('order/bolus-post-pyloric', path, { ...says, key, why: allowed.why })];
  const code = allowed.value ? 'order/bolus-post-pyloric-allowed' : 'order/bolus-post-pyloric';
  return [problem(code, path, { ...says, ...restsOn(key, allowed.basis) })];
}

/** [OR10] Beyond the stomach a feed wants a pump: what runs in fast has no reservoir (common practice). */
function withoutPump({ order, feedLumen }: Review): readonly Problem[] {
  const { regimen, method } = order;
  const byGravity = method === 'gravity' || (regimen?.kind === 'intermittent' && regimen.by === 'gravity');
  return byGravity && regimen?.kind !== 'bolus' && isPostPyloric(feedLumen)
    ? [problem('order/post-pyloric-without-pump', path, { lumen: feedLumen?.name, tip: feedLumen?.tip })]
    : [];
}

const STOMACH: readonly TipSite[] = ['gastric'];
const BEYOND: readonly TipSite[] = ['duodenal', 'jejunal'];

/** Where the tips of a device are by its design. Elsewhere it has moved, or the order means another device. */
const DESIGNED: Readonly<Record<DeviceKind, readonly TipSite[]>> = {
  nasogastric: STOMACH,
  orogastric: STOMACH,
  nasoduodenal: BEYOND,
  nasojejunal: BEYOND,
  gastrostomy: STOMACH,
  'gastrostomy-button': STOMACH,
  'gastro-jejunal': [...STOMACH, ...BEYOND],
  jejunostomy: ['jejunal'],
};

/** [OR11] */
function tips({ device, lumens: all }: AccessDevice): readonly Problem[] {
  return all.flatMap(({ name, tip }, i) =>
    tip === null || DESIGNED[device].includes(tip)
      ? []
      : [
          problem('order/tip-unusual', ['access', 'lumens', i, 'tip'], {
            lumen: name,
            tip,
            device,
            usual: DESIGNED[device],
          }),
        ],
  );
}

/** [OR44] */
function medicines({ order }: Review): readonly Problem[] {
  const lumen = lumenNamed(order, order.access?.medicineBy ?? null);
  return order.medicines.length > 0 && isPostPyloric(lumen)
    ? [
        problem('order/medicine-post-pyloric', ['access', 'medicineBy'], {
          lumen: lumen?.name,
          tip: lumen?.tip,
          medicines: order.medicines.map((medicine) => medicine.name),
        }),
      ]
    : [];
}

export function tube(review: Review): readonly Problem[] {
  const { access } = review.order;
  return access === null
    ? []
    : [
        ...lumens(access),
        ...uses(review, access),
        ...bolus(review),
        ...withoutPump(review),
        ...tips(access),
        ...medicines(review),
      ];
}
