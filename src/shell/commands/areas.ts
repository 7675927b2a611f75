import type { Command } from 'commander';
import { aLawn, given, json, type Run, strict } from './common.ts';

export function addAreas(program: Command, { io, ended }: Run): void {
  program
    .command('areas')
    .description('tell how large the areas of a lawn are and by how much they may be off, and draw each')
    .argument(...aLawn)
    .option('--out <folder>', 'where the drawings (SVG) go (default: out/site)')
    .option('--dry-run', 'write nothing')
    .option(...json)
    .option(...strict)
    .addHelpText('after', '\nExample:\n  soilclock areas lawn.yaml --out out/areas')
    .action(async (lawn: string | undefined, options) => {
      const { areasCommand } = await import('../areas-command.ts');
      ended(areasCommand(given(lawn), options, io));
    });
}
