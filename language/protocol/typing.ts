import type { WirePosition } from './place.ts';

/** Notification `laybook/cursor`: where the cursor stands now, in which text; none where no text of ours has the focus. */
export const cursorNotification = 'laybook/cursor';
export interface CursorParams {
  readonly uri?: string;
  readonly position?: WirePosition;
}
