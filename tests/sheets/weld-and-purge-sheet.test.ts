import { describe, expect, it } from 'vitest';
import { hasWords } from '../../server/language/words.ts';
import type { Plan } from '../../server/plan/plan.ts';
import { layoutSheet } from '../../server/sheets/render-sheet.ts';
import { planWithSleeve } from './fixture-set-ups.ts';
import { makeJob, makePlan } from './fixture.ts';
import { texts } from './layout-faults.ts';

function saidBy(plan: Plan = makePlan(), job = makeJob()): string {
  const sheet = layoutSheet('weld-and-purge', { plan, job, revision: null });
  if (!sheet.ok) throw new Error(sheet.reason);
  return sheet.pages.flatMap(({ items }) => texts(items).map(({ text }) => text)).join(' ');
}

const whole = saidBy();
const common = whole.slice(whole.indexOf('What holds for the whole job'));

describe('what holds for the whole job', () => {
  it('comes after the set-ups, in the order of work', () => {
    const order = [
      'Set-up 1 of 1',
      'What holds for the whole job',
      'Order of welding',
      'What welding moves',
      'Bottle and room',
      'Whole frame or pockets between dams',
      'Readings of the meter',
      'Grind and polish',
    ];
    const places = order.map((said) => whole.indexOf(said));
    expect(places.every((place) => place >= 0)).toBe(true);
    expect(places.toSorted((a, b) => a - b)).toEqual(places);
  });

  it('has the welds in their order with their quarters and set-up', () => {
    expect(common).toContain('1 1 hoop at 1020.0 mm 2 4 3 1 1');
    expect(common).toContain('4 S2 crossbar 1, far end on hoop 1 3 2 4 1');
  });

  it('says what is drilled before anything is tacked, and nothing where nothing is', () => {
    expect(common).not.toContain('drill a hole');
    const job = makeJob();
    const { holes } = job.purge;
    const drilled = (change: Partial<typeof holes>): string =>
      saidBy(makePlan(), { ...job, purge: { ...job.purge, holes: { ...holes, ...change } } }).replace(/\s+/g, ' ');
    const except = [{ member: 'crossbar 1', end: 'finish' as const }];
    expect(drilled({ underSaddles: 'all' })).toContain(
      'so that their bores open into it: crossbar 1, datum end; crossbar 1, far end.',
    );
    expect(drilled({ underSaddles: 'all', except })).toContain('open into it: crossbar 1, datum end.');
    expect(drilled({ except })).toContain(
      'drill a hole of 6 mm through the wall under each of these ends, so that their bores open into it: crossbar 1, far end.',
    );
    const at = { member: 'hoop', spot: 'along' as const, number: 1, distance: 120 };
    expect(drilled({ toAir: [{ at, bore: 5 }] })).toContain('Vent hole 1: 5 mm, in hoop, 120.0 mm from its start.');
  });

  it('says of each size what shrinkage, this order and the worst one do to it, and what it measures tacked', () => {
    expect(common).toContain('width at the corners −0.50 mm +0.20 mm +3.10 mm +0.30 mm');
    expect(common).toContain('width at the feet −0.50 mm −1.40 mm −6.20 mm +1.90 mm');
    expect(common).toContain('this one +1.40 mm, the plan’s +1.40 mm, the worst +6.20 mm');
    expect(common).toContain('with a pull of 0.75° for each joint: reckoned, not measured');
    expect(common).not.toContain("the plan's order adds");
  });

  it("has a column for the plan's order only where another one is typed", () => {
    const plan = makePlan();
    const proposed = plan.welding!.proposed.toReversed();
    expect(saidBy({ ...plan, welding: { ...plan.welding!, proposed } })).toContain("the plan's order adds");
  });

  it('says the gas, the bottle, the gauge after, and the air of the room, big ones to three figures', () => {
    for (const said of [
      'gas for the job 100 L',
      'bottles like this one 1',
      'gauge when the job is done 145 bar',
      'can be taken from this bottle 2980 L',
      'oxygen alarm, air still, after 2 h 0 min',
      'oxygen alarm, with the fan, after does not come',
      'fresh air to run 139 L/min',
      'alarm in the low space after 21 min',
    ]) {
      expect(common).toContain(said);
    }
  });

  it('compares the whole frame with dams, and says in full what keeps one from it', () => {
    expect(common).toContain('the whole frame 1 3 min 30 s 28 L 40 L 31 min');
    expect(common).toContain('a short chamber between dams 4 13 min 30 s 68 L 90 L 53 min Not as typed:');
    expect(common).not.toContain('dam in bend');
  });

  it('has the readings of the meter with their verdicts, and nothing of them where there are none', () => {
    expect(common).toContain('1 3 min 900 ppm 120 ppm 5.0 ppm');
    expect(common).toContain('later than reckoned: look for a leak');
    const plan = makePlan();
    expect(saidBy({ ...plan, purge: { ...plan.purge!, meters: [] } })).not.toContain('Readings of the meter');
  });

  it('has the sleeve where one backs the welds', () => {
    expect(common).not.toContain('Sleeve');
    const said = saidBy(planWithSleeve());
    expect(said).toContain('Sleeve inside each butt outside diameter 34.2 mm wall 1.5 mm length 90.0 mm');
    expect(said).toContain('plug holes 2 of 8 mm');
  });

  it('has the steps of finishing with grits, the roughness, minutes for each weld, the bath and the notes', () => {
    for (const said of [
      'Ra to aim at 0.40 µm ± 0.10 µm',
      'grit 40 to 60:',
      'grit 80:',
      'grit 240 to 320:',
      'S1 4.5 min 9 min',
      'Together 54.0 min ± 18.0 min.',
      'Then clean: citric 3, 21 °C to 49 °C, at least 20 min',
    ]) {
      expect(common.replaceAll('μ', 'µ')).toContain(said);
    }
    for (const note of makePlan().finish!.notes) expect(hasWords(`finish.note.${note}`)).toBe(true);
  });
});

describe('steps of finishing', () => {
  it('stand under the name of their welds where those in corners are done another way', () => {
    const plan = makePlan();
    const [first, ...rest] = plan.finish!.steps;
    const steps = [
      { ...first!, welds: 'butts' as const },
      ...rest.map((step) => ({ ...step, welds: 'corners' as const })),
    ];
    const said = saidBy({ ...plan, finish: { ...plan.finish!, steps } });
    expect(said).toMatch(
      /Butts: splices, let-in pieces, closing welds grit 40 to 60: .* Saddles and pads: dressed, not ground flush grit 80: /,
    );
    expect(whole).not.toContain('Saddles and pads: dressed');
  });
});

describe('every text', () => {
  it('is whole: nothing left to fill in, no number that is none', () => {
    for (const said of [whole, saidBy(planWithSleeve())])
      expect(said).not.toMatch(/[{}]|undefined|NaN|Infinity|\[object/);
  });
});
