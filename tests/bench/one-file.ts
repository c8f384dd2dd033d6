/** `node one-file.ts FILE`: the measures of one file of this folder, as JSON. */
import type { Bench } from './measure.ts';

const { measure } = (await import(`./${process.argv[2]}`)) as { readonly measure: Bench };
process.stdout.write(JSON.stringify(await measure()));
