// Where things are in the checkout.
import path from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
export const bin = path.join(root, 'node_modules/.bin');
export const dist = path.join(root, 'dist');
export const sample = path.join(root, 'extension/sample');
