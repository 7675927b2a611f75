import type { Command } from 'commander';
import { given, json, type Run, strict } from './common.ts';

export function addDid(program: Command, { io, ended }: Run): void {
  program
    .command('did')
    .description(
      'write down work that was done; take an entry back; export the record; carry over into the next season',
    )
    .argument('[lawn]', 'a lawn file; lawn.yaml here')
    .argument('[step]', "a step of the lawn's program")
    .option('--date <day>', 'the day it was done instead of today (YYYY-MM-DD)')
    .option('--start <time>', 'when it began (HH:MM)')
    .option('--end <time>', 'when it was done (HH:MM)')
    .option('--work <kind>', 'work outside the program: spread, spray, seed, aerate, mow, water, scout, sample, other')
    .option('--areas <list>', 'the areas it was done on, with commas; all of them when left out')
    .option('--product <id>', 'the product, where it is not the one that the plan has for the step')
    .option('--registration <number>', "the product's registration number, where it is not that of the products file")
    .option('--target <pest>', 'the weed, insect or disease that it was put down against')
    .option('--loaded <amount>', 'what was filled in, such as "16 lb"')
    .option('--used <amount>', 'what was put down; else what was loaded less what was left')
    .option('--left <amount>', 'what was left in the hopper')
    .option('--spreader <id>', "which of the lawn's spreaders, where it has several")
    .option('--setting <number>', "the spreader's setting")
    .option('--sprayer', 'it was put down with the sprayer')
    .option('--output <rate>', 'what the sprayer put out, such as "1 gal/1000 sqft"')
    .option('--pass <number>', 'which pass it was')
    .option('--by <name>', 'who did it')
    .option('--licence <text>', 'with which licence')
    .option('--wind <speed>', 'wind at the start, such as "4 mph"')
    .option('--wind-from <point>', 'where it came from: n, nne, ne and so on, or variable')
    .option('--air <temperature>', 'air at the start, such as "62 F"')
    .option('--re-entry <text>', "when the turf may be walked on again, where it is not the label entry's")
    .option('--notices <text>', 'notices that were given or posted')
    .option('--note <text>', 'anything worth keeping')
    .option(
      '--corrects <name>',
      'the entry that this one stands in place of, by its id, or by day and step; what is not named stays as it was',
    )
    .option('--undo', 'take the last entry back, or the one of --entry')
    .option('--entry <name>', 'an entry by its id, or by day and step: "2027-04-03 autumn-feed-1"')
    .option('--list', 'show the entries in force')
    .option('--export', "the applicator's record of a year: CSV, and a page to print")
    .option('--year <year>', 'with --export: another year than this one')
    .option('--out <folder>', 'with --export: where the files go (default: out/record)')
    .option('--close-season', 'carry over: the shelf as it is now, without pins of days gone by')
    .option('--to <file>', 'with --close-season: a new lawn file instead of this one')
    .option('--dry-run', 'write nothing')
    .option(...json)
    .option(...strict)
    .addHelpText(
      'after',
      '\nExample:\n  soilclock did lawn.yaml autumn-feed-1 --loaded "16 lb" --left "2 oz" --setting 5.5',
    )
    .action(async (lawn: string | undefined, step: string | undefined, options) => {
      const { didCommand } = await import('../did/did-command.ts');
      ended(didCommand(given(lawn, step), options, io));
    });
}
