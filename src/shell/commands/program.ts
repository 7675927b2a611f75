import type { Command } from 'commander';
import { given, json, type Run, strict } from './common.ts';

const ofWhich = ['[lawn]', 'a lawn file, or the https address of a program; lawn.yaml here'] as const;

export function addProgram(program: Command, { io, ended }: Run): void {
  const group = program.command('program').description('programs by address: fetch, update');
  const add = (action: 'fetch' | 'update', description: string) =>
    group
      .command(action)
      .description(description)
      .argument(...ofWhich)
      .option('--dry-run', 'keep and pin nothing; say what there is')
      .option(...json)
      .option(...strict)
      .addHelpText(
        'after',
        `\nExample:\n  soilclock program ${action} lawn.yaml\n  soilclock program ${action} https://lawns.example/tall-fescue.yaml`,
      )
      .action(async (lawn: string | undefined, options) => {
        const { programCommand } = await import('../share/program-command.ts');
        ended(await programCommand(action, given(lawn), options, io));
      });
  add('fetch', 'bring the programs that a lawn names by address, tell who made them, and pin them by their SHA-256');
  add('update', 'bring them anew, tell step by step what is other, and pin that');
}
