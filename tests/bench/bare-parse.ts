/** A process of its own that does no more than read files and parse them: what any tool over this grammar must pay. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { EmptyFileSystem } from 'langium';
import { createLayupServices } from '../../language/book/services.ts';

const folder = process.argv[2] ?? '.';
const { layup } = createLayupServices(EmptyFileSystem);
for (const name of readdirSync(folder)) layup.parser.LangiumParser.parse(readFileSync(path.join(folder, name), 'utf8'));
