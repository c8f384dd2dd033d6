import { type Text, text } from '../figure/figure.ts';

/** What is wrong with a date, ISO 8601; nothing where the calendar (Gregorian) has the day. */
export function wrongDate(date: string): Text | undefined {
  const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(date);
  if (parts === null) return text('a date is written year-month-day: 2026-05-14');
  const [year, month, day] = parts.slice(1).map(Number) as [number, number, number];
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  const days = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1] ?? 0;
  return day >= 1 && day <= days ? undefined : text('{date} is no day of the calendar', { date });
}
