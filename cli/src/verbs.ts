/** Which verbs are there, and which flags does each take? Only names and help here: a verb's work is in its own file. */
import type { Command } from 'commander';
import { confirmArgument } from './arguments.ts';
import { addWork } from './work.ts';

const withPolicy = (verb: Command): Command =>
  verb
    .option('--policy <file>', 'local policy: your rows on top of the default ones')
    .option('--feeds <file>', 'feed list: your feeds added to the default ones');

const withOrder = (verb: Command): Command =>
  withPolicy(verb)
    .option('--zone <zone>', 'time zone, where the order names none: Europe/London')
    .option('--confirm <key=value>', 'answers what had to be asked; as often as needed', confirmArgument)
    .option('--json', 'print JSON');

function addOrderVerbs(root: Command): void {
  withOrder(root.command('plan'))
    .argument('<file>', 'order document or FHIR NutritionOrder; - for standard input')
    .description('what to pour, programme, check and flush from now on, when, and why')
    .option('--from <instant>', 'plan from this moment instead of now: 2026-11-25T08:00 or with an offset')
    .option('--hours <n>', 'plan so many hours instead of to the end of the feeding day')
    .option('--working', 'show the working of every number')
    .action(async (file, options) => (await import('./plan.ts')).plan(file, options));
  withOrder(root.command('check'))
    .argument('<file>', 'order document or FHIR NutritionOrder; - for standard input')
    .description('what is missing in an order or contradicts itself; exit code 1 where that stops it')
    .option('--from <instant>', 'judge at this moment instead of now')
    .action(async (file, options) => (await import('./check.ts')).check(file, options));
  root
    .command('demo')
    .description("the demo ward's plans: invented people, invented numbers")
    .option('--ledger', 'print the record of its three days instead, as export would: for import and replay')
    .option('--json', 'print JSON')
    .action(async (options) => (await import('./demo.ts')).demo(options));
}

function addFacilityVerbs(root: Command): void {
  root
    .command('scan')
    .argument('<text>', "a container's code as scanned, or as printed: (01)…(17)…(10)…; - for standard input")
    .description('what a code says, which feed it is, whether ordered and in date; exit code 1 on a stop')
    .option('--order <file>', 'the order that the container is for')
    .option('--feeds <file>', 'feed list: your feeds, with their product numbers, added to the default ones')
    .option('--at <instant>', 'judge at this moment instead of now')
    .option('--zone <zone>', "the ward's time zone, where no order names it: Europe/London")
    .option('--json', 'print JSON')
    .action(async (text, options) => (await import('./scan.ts')).scan(text, options));
  root
    .command('policy')
    .argument('[key]', 'a row to explain: hang.closed')
    .description('local policy: every row with its source; one row explained; or a file checked')
    .option('--policy <file>', 'check this policy file and show what it changes')
    .option('--json', 'print JSON')
    .action(async (key, options) => (await import('./policy.ts')).policy(key, options));
  root
    .command('feeds')
    .argument('[id]', 'a feed to explain: standard-1.0')
    .description('the feed list: every feed with its composition; one feed explained; or a file checked')
    .option('--feeds <file>', 'check this feed list')
    .option('--json', 'print JSON')
    .action(async (id, options) => (await import('./feeds.ts')).feeds(id, options));
  root
    .command('schema')
    .argument('<name>', 'order, policy, feeds, plan, standing or entry')
    .description('the JSON Schema of a document')
    .option('--json', 'print JSON (it always is)')
    .action(async (name) => (await import('./schema.ts')).schema(name));
}

const withData = (verb: Command): Command =>
  verb.option('--data <folder>', 'the data folder, where the ledger is kept', 'data');

function addLedgerVerbs(root: Command): void {
  withData(root.command('export'))
    .description('a whole ledger as lines of JSON, to the byte')
    .action(async (options) => (await import('./export.ts')).exportLedger(options));
  withData(root.command('import'))
    .argument('<file>', 'an exported ledger')
    .description('take an exported ledger in; what is there already is not taken twice')
    .option('--json', 'print JSON')
    .action(async (file, options) => (await import('./import.ts')).importLedger(file, options));
  withData(root.command('verify'))
    .description('whether the ledger is still what was acknowledged; exit code 1 where it is not')
    .option('--head <file>', 'heads kept elsewhere: one, a list, or the last line of an export')
    .option('--json', 'print JSON')
    .action(async (options) => (await import('./verify.ts')).verifyLedger(options));
  withData(root.command('backup'))
    .argument('<file>', 'the file to copy to; it must not be there yet')
    .description('copy the ledger, checked, while it is in use')
    .option('--json', 'print JSON')
    .action(async (file, options) => (await import('./backup.ts')).backup(file, options));
  withData(root.command('restore'))
    .argument('<file>', 'a backup')
    .description('make a ledger of a backup, as a new epoch; never over one that is there')
    .option('--json', 'print JSON')
    .action(async (file, options) => (await import('./backup.ts')).restore(file, options));
}

function addReplay(root: Command): void {
  withPolicy(root.command('replay'))
    .argument('<file>', 'an exported ledger, or lines of entries; - for standard input')
    .description('what was true of each course at a moment, by its record, and the plan from there')
    .option('--at <instant>', 'at this moment instead of the last one in the file: 2026-10-25T08:00+00:00')
    .option('--course <name>', 'only this course')
    .option('--working', 'show the working of every number')
    .option('--json', 'print JSON')
    .action(async (file, options) => (await import('./replay.ts')).replay(file, options));
}

export function addVerbs(root: Command): void {
  addOrderVerbs(root);
  addFacilityVerbs(root);
  addWork(root);
  addLedgerVerbs(root);
  addReplay(root);
}
