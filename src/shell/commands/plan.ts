import { type Command, Option } from 'commander';
import { aLawn, collect, given, json, type Run, strict } from './common.ts';

export function addPlan(program: Command, { io, ended }: Run): void {
  program
    .command('plan')
    .description(
      'plan a lawn: what now, the season, its calendar feed; with STEP, the whole why of one step; or several lawns for one calendar',
    )
    .argument(...aLawn)
    .argument('[step]', 'the id of one step')
    .option('--as-of <day>', 'plan as of this day instead of today (YYYY-MM-DD)')
    .option('--weather <file>', "a weather file instead of the lawn's own; may be repeated", collect)
    .option('--program <file>', "a program file, or the address of a fetched one, instead of the lawn's own")
    .option('--out <folder>', 'where the feed goes (default: out/site)')
    .addOption(
      new Option('--detail <how>', 'how much the feed carries').choices(['quiet', 'normal', 'full']).default('normal'),
    )
    .option('--no-sheet', 'write the feed alone, without the season sheet beside it')
    .option('--compare <plan.json>', 'say what moved since an earlier "plan --json"')
    .option('--dry-run', 'write nothing; say what subscribers would see change')
    .option(...json)
    .option(...strict)
    .addHelpText(
      'after',
      '\nExample:\n  soilclock plan lawn.yaml --as-of 2027-04-02\n  soilclock plan lawn.yaml summer-annual-barrier\n  soilclock plan my-lawns.yaml',
    )
    .action(async (lawn: string | undefined, step: string | undefined, options) => {
      const { planCommand } = await import('../plan-command.ts');
      ended(await planCommand(given(lawn, step), options, io));
    });
}
