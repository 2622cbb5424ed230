/**
 * Where in this document is the order, and what came with it?
 * A NutritionOrder alone, or a Bundle in which there is one for tube feeding. References lead to what the Bundle or the
 * order itself contains; what belongs to another patient is left alone.
 */
import { bad, issue, ok, type Result } from '@feedwright/core/base/result';
import { type Element, field, items, textOf } from './element.ts';
import { pathText } from './reading.ts';

export type Resource = Element & { readonly type: string };
export type Document = {
  readonly root: Element;
  readonly order: Element;
  readonly beside: readonly Resource[];
  /** The resource a Reference leads to, in this document; null where it leads out of it. */
  readonly resolve: (reference: Element | null) => Resource | null;
};

const typed = (element: Element | null): Resource | null => {
  const type = textOf(element, 'resourceType');
  return element === null || type === null ? null : { ...element, type };
};

const ORDER = 'NutritionOrder';
const isTubeOrder = (order: Element): boolean => field(order, 'enteralFormula') !== null;

/** What a Reference may call a resource: its place in the Bundle, and its type and id. */
function namesOf(entry: Element | null, resource: Resource): readonly string[] {
  const id = textOf(resource, 'id');
  const url = textOf(entry, 'fullUrl');
  return [...(url === null ? [] : [url]), ...(id === null ? [] : [`${resource.type}/${id}`, `#${id}`])];
}

type Named = { readonly resource: Resource; readonly names: readonly string[] };

function resolver(inBundle: readonly Named[], contained: readonly Named[]): Document['resolve'] {
  return (reference) => {
    const target = textOf(reference, 'reference');
    if (target === null) return null;
    const inside = target.startsWith('#');
    const known = (inside ? contained : inBundle).find(({ names }) =>
      names.some((name) => name === target || (!inside && target.endsWith(`/${name}`))),
    );
    return known?.resource ?? null;
  };
}

/** The one order for tube feeding among several, or why there is not one. */
function theOrder(orders: readonly Resource[]): Result<Resource> {
  const forTube = orders.filter(isTubeOrder);
  const [one] = forTube.length > 0 ? forTube : orders;
  if (one === undefined) return bad(issue([], 'fhir/no-order', {}));
  if (forTube.length > 1 || (forTube.length === 0 && orders.length > 1)) {
    const places = (forTube.length > 1 ? forTube : orders).map(({ path }) => pathText(path));
    return bad(issue([], 'fhir/several-orders', { places }));
  }
  return ok(one);
}

/** [FH1] The order in a document and what stands beside it. */
export function documentOf(root: Element): Result<Document> {
  const top = typed(root);
  if (top === null) return bad(issue(['resourceType'], 'fhir/no-resource', {}));
  const isBundle = top.type === 'Bundle';
  if (!isBundle && top.type !== ORDER) {
    return bad(issue(['resourceType'], 'fhir/other-resource', { resourceType: top.type.slice(0, 80) }));
  }
  const entries: readonly Named[] = (isBundle ? items(root, 'entry') : []).flatMap((entry) => {
    const resource = typed(field(entry, 'resource'));
    return resource === null ? [] : [{ resource, names: namesOf(entry, resource) }];
  });
  const order = isBundle
    ? theOrder(entries.map(({ resource }) => resource).filter(({ type }) => type === ORDER))
    : ok(top);
  if (!order.ok) return order;
  const contained = items(order.value, 'contained').flatMap((element) => {
    const resource = typed(element);
    return resource === null ? [] : [{ resource, names: namesOf(null, resource) }];
  });
  const beside = [...entries, ...contained].map(({ resource }) => resource);
  return ok({
    root,
    order: order.value,
    beside: beside.filter(({ path }) => pathText(path) !== pathText(order.value.path)),
    resolve: resolver(entries, contained),
  });
}
