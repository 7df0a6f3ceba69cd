import { expect, it } from 'vitest';
import { dayWords } from '../../server/language/day-words.ts';
import { describeFinding } from '../../server/language/finding-words.ts';
import { clock } from '../../web/state/clock.ts';

it('a day reads alike wherever it stands in a text', () => {
  expect(['2026-11-26', '2026-01-02', '', 'soon', '2026-13-01'].map(dayWords)).toEqual([
    '26 Nov 2026',
    '2 Jan 2026',
    '',
    'soon',
    '2026-13-01',
  ]);
  const data = { date: '2026-08-01', until: '2026-06-30' };
  const told = describeFinding(
    { code: 'rates-not-in-effect', grade: 'caution', field: '/quote/date', data, wayOut: null },
    { length: 'mm', fraction: 16 },
  );
  expect(told).toContain('1 Aug 2026');
  expect(told).toContain('until 30 Jun 2026');
  const noon = new Date(2026, 10, 26, 12, 0);
  expect(clock(noon.toISOString(), new Date(2026, 10, 27))).toMatch(/^26 Nov 2026, .*12/);
  expect(clock(noon.toISOString(), noon)).not.toContain('Nov');
});
