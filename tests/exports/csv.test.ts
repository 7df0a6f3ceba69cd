import { describe, expect, it } from 'vitest';
import { landingStage } from '../../db/demo/landing-stage.ts';
import { bendTableCsv } from '../../server/exports/bend-table-csv.ts';
import { csvText } from '../../server/exports/csv.ts';
import { membersCsv } from '../../server/exports/members-csv.ts';
import { weldsCsv } from '../../server/exports/welds-csv.ts';
import { newJob } from '../../server/job/default-job.ts';
import { arc, chain, frameOf, inputOf, line, straight } from './made-up-frames.ts';
import { readCsv } from './read-csv.ts';

const tube = (name: string) =>
  straight(name, [
    [0, 0, 0],
    [500, 0, 0],
  ]);

describe('the bend table', () => {
  it('has a row a bend with every figure of the plan, its unit in the head', () => {
    const input = inputOf(landingStage());
    const rows = readCsv(bendTableCsv(input));
    const bends = input.plan.frame!.members.flatMap((member) => member.bends.map((bend) => ({ member, bend })));
    expect(rows).toHaveLength(bends.length);
    expect(bends.length).toBeGreaterThan(2);
    bends.forEach(({ member, bend }, index) => {
      const row = rows[index]!;
      expect(row['member']).toBe(member.name);
      expect(row['bend']).toBe(String(bend.number));
      const figures = {
        'straight before (mm)': bend.feed,
        'start mark (mm)': bend.startMark,
        'middle mark (mm)': bend.middleMark,
        'end mark (mm)': bend.endMark,
        'rotation (deg)': bend.rotation,
        'rotation round the outside (mm)': bend.rotationRound,
        'angle wanted (deg)': bend.angle,
        'bend to (deg)': bend.angleToBendTo,
        'die radius (mm)': bend.dieRadius,
        'radius after release (mm)': bend.radiusAfterRelease,
        'arc length (mm)': bend.arcLength,
        'check over the outside (mm)': bend.check,
      };
      expect(Object.keys(row)).toEqual(['member', 'bend', 'made', ...Object.keys(figures)]);
      for (const [head, figure] of Object.entries(figures)) {
        if (figure === null) expect(row[head], head).toBe('');
        else {
          expect(row[head], head).toMatch(/^-?\d+(\.\d{1,4})?$/);
          expect(Math.abs(Number(row[head]) - figure.value), head).toBeLessThanOrEqual(0.5e-4);
        }
      }
    });
  });

  it('leaves a negative rotation a number', () => {
    const job = frameOf([chain('run', [line(200), arc(75, 150, 0), line(180), arc(40, 260, -100), line(90)])]);
    const rotations = readCsv(bendTableCsv(inputOf(job))).map((row) => Math.abs(Number(row['rotation (deg)'])));
    expect(rotations).toEqual([0, 100]);
    const made = bendTableCsv(inputOf(job));
    expect(made.ok && made.text).toMatch(/,-100(\.0+)?,-\d/);
  });

  it('is of one member where one is chosen, and says where there is nothing', () => {
    const stage = landingStage();
    expect(new Set(readCsv(bendTableCsv(inputOf(stage, 'hoop'))).map((row) => row['member']))).toEqual(
      new Set(['hoop']),
    );
    expect(bendTableCsv(inputOf(stage, 'nobody'))).toMatchObject({ reason: 'no-such-member', member: 'nobody' });
    expect(bendTableCsv(inputOf(newJob('straight')))).toMatchObject({ ok: false, reason: 'no-bends' });
    const tooThick = { ...stage, tube: { ...stage.tube, wall: 25 } };
    expect(bendTableCsv(inputOf(tooThick))).toMatchObject({ ok: false, reason: 'frame-not-possible' });
  });
});

describe('the members', () => {
  it('have their lengths, mass and ends', () => {
    const input = inputOf(landingStage());
    const rows = readCsv(membersCsv(input));
    input.plan.frame!.members.forEach((member, index) => {
      const row = rows[index]!;
      expect(row['member']).toBe(member.name);
      expect(row['bends']).toBe(String(member.bends.length));
      expect(Number(row['cut length (mm)'])).toBeCloseTo(member.cutLength.value, 3);
      expect(Number(row['developed length (mm)'])).toBeCloseTo(member.developedLength.value, 3);
      expect(Number(row['last straight (mm)'])).toBeCloseTo(member.lastStraight.value, 3);
      expect(Number(row['mass (kg)'])).toBeCloseTo(member.mass.value, 3);
      expect(row['start: sits on']).toBe(member.start.onto ?? '');
      expect(Number(row['finish: y (mm)'])).toBeCloseTo(member.finish.point.y, 3);
    });
    expect(rows.map((row) => row['start: end'])).toEqual(['free end', 'saddle on another member']);
  });
});

describe('the welds', () => {
  const closes = (text: string | undefined, value: number, head: string) => {
    expect(text, head).toMatch(/^-?\d+(\.\d{1,4})?$/);
    expect(Math.abs(Number(text) - value), head).toBeLessThanOrEqual(0.5e-4);
  };

  it('have a row each with where it is, how it is prepared and what it is welded with', () => {
    const input = inputOf(landingStage());
    const rows = readCsv(weldsCsv(input));
    const { welds, procedures } = input.plan.welding!;
    const { chambers } = input.plan.purge!;
    expect(rows.map((row) => row['weld'])).toEqual(welds.map(({ name }) => name));
    expect(welds.length).toBeGreaterThan(0);
    welds.forEach((weld, index) => {
      const row = rows[index]!;
      const procedure = procedures.find(({ form }) => form === weld.form)!;
      expect(row).toMatchObject({
        member: weld.member,
        'sits on': weld.onto,
        'position ISO 6947': weld.position.code,
        'position AWS': weld.position.american,
        'process ISO 4063': weld.symbol.process,
        filler: procedure.filler,
        tacks: String(weld.tacks.count.value),
      });
      const filled = chambers.filter((one) => one.welds.includes(weld.name)).map(({ number }) => String(number));
      expect(row['chambers']).toBe(filled.join(' '));
      const figures = {
        'gap (mm)': weld.gap,
        'length (mm)': weld.length,
        'current from (A)': procedure.currentLow,
        'current to (A)': procedure.currentHigh,
        'filler diameter (mm)': procedure.fillerDiameter,
        'hi-lo expected (mm)': weld.misfit?.hiLo ?? null,
        'hi-lo for polish at most (mm)': weld.misfit?.polish ?? null,
        'hi-lo ISO 5817 at most (mm)': weld.misfit?.standard ?? null,
        'shrinkage (mm)': weld.shrinkage,
      };
      closes(row['station (mm)'], weld.station, 'station (mm)');
      for (const [head, figure] of Object.entries(figures))
        if (figure === null) expect(row[head], head).toBe('');
        else closes(row[head], figure.value, head);
    });
  });

  it('say in words what they are and sit on, and leave empty what is not known of them', () => {
    const job = landingStage();
    const rows = readCsv(weldsCsv(inputOf({ ...job, closing: { ...job.closing, way: 'new-frame' } })));
    const saddles = rows.filter((row) => row['kind'] === 'saddle');
    expect(saddles.map((row) => [row['weld'], row['member'], row['sits on'], row['preparation']])).toEqual([
      ['S1', 'crossbar 1', 'hoop', 'saddle, fitted'],
      ['S2', 'crossbar 1', 'hoop', 'saddle, fitted'],
    ]);
    for (const row of saddles) expect(row['hi-lo expected (mm)']).toBe('');
  });

  it('are of one member where one is chosen, and there are none where nothing is joined', () => {
    const job = { ...landingStage(), cameBack: null };
    const rows = readCsv(weldsCsv(inputOf(job, 'crossbar 1')));
    expect(new Set(rows.map((row) => row['member']))).toEqual(new Set(['crossbar 1']));
    expect(weldsCsv(inputOf(job, 'nobody'))).toMatchObject({ reason: 'no-such-member', member: 'nobody' });
    expect(weldsCsv(inputOf(newJob('straight')))).toMatchObject({ ok: false, reason: 'no-welds' });
    const tooThick = { ...job, tube: { ...job.tube, wall: 25 } };
    expect(weldsCsv(inputOf(tooThick))).toMatchObject({ ok: false, reason: 'frame-not-possible' });
  });
});

describe('a table', () => {
  it('ends every line with CRLF, quotes what needs it and comes back as it was', () => {
    const names = ['long, and "quoted"', 'two\r\nlines', ' plain ', 'semi;colon'];
    const made = membersCsv(inputOf(frameOf(names.map(tube))));
    expect(readCsv(made).map((row) => row['member'])).toEqual(names);
    const text = csvText([{ head: 'a,b', cell: (row: string) => row }], ['x', 'say "x"']);
    expect(text).toBe('"a,b"\r\nx\r\n"say ""x"""\r\n');
  });

  it.each(['=1+1', '+44', '-2+3', '@sum', '\t=1', '＝1'])('holds %j off a spreadsheet', (name) => {
    expect(readCsv(membersCsv(inputOf(frameOf([tube(name)]))))[0]!['member']).toBe(`'${name}`);
  });

  it('carries a byte order mark only where a text is not ASCII', () => {
    const text = (name: string) => {
      const made = membersCsv(inputOf(frameOf([tube(name)])));
      return made.ok ? made.text : '';
    };
    expect(text('rail').startsWith('member,')).toBe(true);
    expect(text('Bügel').startsWith('\uFEFFmember,')).toBe(true);
    expect(text('Bügel')).toContain('\r\nBügel,');
  });
});
