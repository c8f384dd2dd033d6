/** The commands about builds that were made. One part of the program, since all read the same records. */
export { lots } from './lots.ts';
export { record } from './record.ts';
export { records } from './records.ts';
