import type { Command } from 'commander';
import { asOf, json, type Run, strict } from './common.ts';

export function addPublish(program: Command, { io, ended }: Run): void {
  program
    .command('publish')
    .description('publish one program, or several, for many places and lawns as a site of static files')
    .argument('<publication>', 'a publication file, such as publish.yaml')
    .option('--out <folder>', 'where the site goes (default: out/site)')
    .option('--base-url <address>', 'where the site will stand, in place of the one in the file')
    .option(...asOf)
    .option('--dry-run', 'write nothing; say what would be written')
    .option(...json)
    .option(...strict)
    .addHelpText('after', '\nExample:\n  soilclock publish publish.yaml --base-url https://lawns.example/')
    .action(async (file: string, options) => {
      const { publishCommand } = await import('../publish-site/publish-command.ts');
      ended(publishCommand(file, options, io));
    });
}
