/** Writes the JSON Schemas of the file kinds beside this file: `npm run schema`. With `--keys` it prints the keys nothing is said of. */
import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { schemas } from './schemas.ts';

for (const [name, { schema, untold }] of Object.entries(schemas())) {
  if (process.argv.includes('--keys')) for (const key of untold) console.log(key);
  else writeFileSync(path.join(import.meta.dirname, `${name}.json`), `${JSON.stringify(schema, null, 1)}\n`);
}
