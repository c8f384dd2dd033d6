import { rule } from '../rule.ts';

export const lineAcceptNeedless = rule({
  name: 'line/accept-needless',
  severity: 'info',
  title: 'an accept that silences nothing',
  on: 'reading',
});
