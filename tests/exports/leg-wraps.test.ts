import DxfParser, { type ITextEntity } from 'dxf-parser';
import { describe, expect, it } from 'vitest';
import type { ExportInput } from '../../server/exports/export-file.ts';
import { wrapsDxf } from '../../server/exports/wraps-dxf.ts';
import { wrapsSvg } from '../../server/exports/wraps-svg.ts';
import { sited } from './made-up-site.ts';

describe('wraps of the legs', () => {
  const texts = (input: ExportInput): string[] => {
    const made = wrapsDxf(input);
    if (!made.ok) throw new Error(made.reason);
    return new DxfParser()
      .parseSync(made.text)!
      .entities.filter((one): one is ITextEntity => one.type === 'TEXT')
      .map(({ text }) => text);
  };

  it('stand after those of the frame, with the name of the leg', () => {
    const drawn = texts(sited());
    const titles = ['port leg, mitre at the foot', 'port leg, saddle at the head', 'middle leg, mitre at the foot'];
    for (const title of titles) expect(drawn).toContain(title);
    expect(drawn.indexOf('square, saddle at the start')).toBeGreaterThanOrEqual(0);
    expect(drawn.indexOf('square, saddle at the start')).toBeLessThan(drawn.indexOf(titles[0]!));
    for (const end of ['foot', 'head']) {
      const said = `Ring: the sawn end at the ${end}. Printed side out, the left edge on the scribed line; the head is up.`;
      expect(drawn).toContain(said);
    }
    expect(drawn.filter((text) => text === 'scribed line')).toHaveLength(4);
    const svg = wrapsSvg(sited());
    expect(svg.ok && svg.text).toContain('middle leg, saddle at the head');
  });

  it('are enough for a file, and no part of a member’s', () => {
    const plain = sited();
    const members = plain.plan.frame!.members.map((member) => ({ ...member, templates: [] }));
    const alone = { ...plain, plan: { ...plain.plan, frame: { ...plain.plan.frame!, members } } };
    expect(texts(alone)).toContain('port leg, saddle at the head');
    expect(texts(sited({}, 'square')).filter((text) => text.includes('leg'))).toEqual([]);
    expect(wrapsDxf({ ...alone, member: 'rail' })).toMatchObject({ ok: false, reason: 'no-wraps' });
  });
});
