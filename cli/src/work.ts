/**
 * `feedwright work [NAME KEY=VALUE …]`: one of the trade's calculations with its working; without a name, the list.
 * Only names and help here; what it does is in `work-answer.ts`, which is loaded when it is called.
 */
import type { Command } from 'commander';

export function addWork(program: Command): void {
  program
    .command('work')
    .argument(
      '[name]',
      'a calculation: rate, dilution, run-out, mifflin-st-jeor; without one, all are listed',
    )
    .argument('[inputs...]', 'KEY=VALUE in the units you use: rate=75mL/h volume="0.5 L" height="5ft 2in"')
    .description('one of the calculations of tube feeding, with its working, conventions and sources')
    .option('--about', 'what the calculation asks for, in which units and bands, instead of working it')
    .option('--json', 'print JSON')
    .addHelpText('after', '\nOf any calculation: round=none, round=0.1, round=down; ounce=29.57; pound=2.2.')
    .action(async (name, inputs, options) => (await import('./work-answer.ts')).work(name, inputs, options));
  program
    .command('gravity')
    .argument(
      '[inputs...]',
      'KEY=VALUE: age=70 tip=gastric french=12 material=polyurethane length=110cm feed=1.5',
    )
    .description('how fast a feed runs from a barrel or a bag, and how long it takes, as a band')
    .option('--about', 'what it asks for, in which units and bands')
    .option('--json', 'print JSON')
    .action(async (inputs, options) => (await import('./work-answer.ts')).work('gravity', inputs, options));
}
