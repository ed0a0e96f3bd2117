// `npm run -s rulebook -- page` and `… preview FILE`: the rulebook as Markdown, and what a drafted
// edition would change.

import { Command, Option } from 'commander';
import { IMPACT_SCOPES } from '#jobs/contract';
import { ALL_RULES, CASES, EDITION_1, EDITION_2 } from '#rules';
import { rulebookPage } from './rulebook-page.js';

const PREVIEW_HELP = `
FILE is JSON, one of:
  {"in_force_from": "2027-01-01", "summary": "…", "edits": [
     {"rule": "GAUGE-07", "settings": {"hail_country_stone_in": 1.5}, "source": "…"}]}
    changes laid over the newest edition of the company, as POST /api/rulebook/drafts takes them;
  {"number": 3, "in_force_from": "…", "summary": "…", "entries": […]}
    a whole edition.
It reads the database of a running installation, as the service's own role, and records nothing:
that of --data, or of DATABASE_SERVICE_URL where it is set. Progress goes to standard error, the
result to standard output. Exit codes: 0 worked out, 1 refused, with every fault named.`;

const program = new Command('npm run -s rulebook --')
  .description('The rulebook: all rules as a page, or what a drafted edition would change.')
  .showHelpAfterError();
program
  .command('page')
  .description('all rules with source, severity and case coverage, as Markdown')
  .action(() => {
    const editions = [EDITION_1, EDITION_2];
    process.stdout.write(rulebookPage({ rules: ALL_RULES, cases: CASES, editions }));
  });
program
  .command('preview <file>')
  .description('what a drafted edition would change, over the record of a running installation')
  .addOption(
    new Option('--scope <scope>', 'open: surfaces not ordered yet; all: every past decision')
      .choices(IMPACT_SCOPES)
      .default('open'),
  )
  .option('--data <folder>', 'data folder of the running installation', '.data')
  .option('--company <id>', 'of which company', 'demonstration')
  .option('--json', 'the result as JSON', false)
  .addHelpText('after', PREVIEW_HELP)
  .action(async (file: string, options) => {
    const { previewFile } = await import('./rulebook-preview.js');
    await previewFile(file, options, {
      out: (text) => process.stdout.write(text),
      progress: (text) => process.stderr.write(text),
    }).catch((error: unknown) => {
      process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
      process.exitCode = 1;
    });
  });
await program.parseAsync();
