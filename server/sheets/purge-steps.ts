import { formatLength } from '../language/length-format.ts';
import { formatFigure, formatQuantity } from '../language/quantity-format.ts';
import { words } from '../language/words.ts';
import type { Chamber, PurgePlan } from '../plan/purge.ts';
import { figuresRow } from './figures-row.ts';
import type { Flow } from './flow.ts';
import { HEIGHTS } from './ink.ts';
import { picture } from './picture.ts';
import { remarks, type SheetInput } from './sheet-input.ts';
import { tick } from './sign.ts';
import { stepHead } from './step.ts';
import { table } from './table.ts';
import { paragraph, space, stacked, type Block } from './text-block.ts';

/** A station this near to an end is the end: finer than a tape reads [mm]. */
const NEAR = 0.1;

const GAS_MARKS: readonly string[] = ['feed', 'vent', 'dam', 'plug'];

/** Where on a member a thing sits: an end by its name, else the distance from the datum end. */
function place(spot: { member: string; station: number }, { plan, job }: SheetInput): string {
  const members = [...(plan.correction?.members ?? []), ...(plan.frame?.members ?? [])];
  const length = members.find(({ name }) => name === spot.member)?.developedLength.value;
  const { member, station } = spot;
  if (station <= NEAR) return words('sheet.place-start', { member });
  if (length !== undefined && Math.abs(station - length) <= NEAR) return words('sheet.place-finish', { member });
  return words('sheet.place-on', { member, distance: formatLength(station, job.units) });
}

/** Step 4: plug, feed low, vent high, as drawn. */
export function plugFeedVent(flow: Flow, purge: PurgePlan, input: SheetInput, number: number): void {
  const { plan, job } = input;
  const view = plan.views.find(({ key }) => key === 'face') ?? plan.views[0];
  const head = stepHead(number, words('sheet.step-gas'), flow.width);
  if (view === undefined) flow.add(head);
  else {
    const layer = view.layers.some(({ role }) => role === 'came-back') ? 'came-back' : 'wanted';
    const drawn = picture(
      view,
      {
        layers: [layer],
        dimensions: () => false,
        marks: ({ kind }) => GAS_MARKS.includes(kind),
        member: null,
        say: () => '',
      },
      { width: flow.width, height: 100 },
    );
    flow.add(stacked([head, drawn]));
  }
  flow.addTable(
    table(
      [
        { head: words('sheet.chamber'), align: 'left' },
        { head: words('sheet.joints'), align: 'left' },
        { head: words('sheet.feed'), align: 'left' },
        { head: words('sheet.vent'), align: 'left' },
        { head: words('sheet.plugs-and-dams'), align: 'left' },
      ],
      purge.chambers.map((chamber) => [
        { text: String(chamber.number), weight: 600 },
        chamber.joints.length === 0 ? '—' : chamber.joints.join(', '),
        place(chamber.feed, input),
        place(chamber.vent, input),
        stoppers(chamber, input),
      ]),
      { width: flow.width, height: 2 },
    ),
  );
  for (const block of remarks(input, /^\/purge(\/|$)/, flow.width)) flow.add(block);
  const bore = words('sheet.vent-bore', {
    bore: formatLength(job.purge.ventBore, job.units),
    pressure: formatFigure(purge.ventPressure, job.units),
    least: formatFigure(purge.ventBoreFor100Pa, job.units),
  });
  const holes = words('sheet.vent-holes', { bore: formatLength(job.purge.ventBore, job.units) });
  flow.add(
    stacked([
      ...(job.purge.ventHoles === 'coped-ends' ? [paragraph(holes, flow.width, { weight: 600 })] : []),
      paragraph(words('sheet.feed-low'), flow.width, { weight: 600 }),
      paragraph(bore, flow.width, { height: HEIGHTS.small }),
      space(2),
    ]),
  );
}

const stoppers = ({ plugs, dams }: Chamber, input: SheetInput): string =>
  [
    ...plugs.map(({ member, end }) =>
      words('sheet.plug-at', { member, end: words(end === 'start' ? 'sheet.at-start' : 'sheet.at-finish') }),
    ),
    ...dams.map((dam) => words('sheet.dam-at', { place: place(dam, input) })),
  ].join('; ') || '—';

/** Step 5: wait, by three models; the printed one big, and the meter decides. */
export function waitForGas(flow: Flow, purge: PurgePlan, { job }: SheetInput, number: number): void {
  const single = purge.chambers.length === 1 ? purge.chambers[0] : undefined;
  flow.add(
    stacked([
      stepHead(number, words('sheet.step-wait'), flow.width),
      figuresRow(
        [
          ...(single === undefined
            ? []
            : [{ name: words('sheet.wait-least'), value: formatFigure(single.printed.time, job.units) }]),
          { name: words('sheet.pre-purge-flow'), value: formatFigure(purge.prePurgeFlow, job.units) },
          {
            name: words('sheet.meter-at-vent'),
            value: words('sheet.or-less', { value: formatFigure(purge.targetOxygen, job.units) }),
          },
        ],
        flow.width,
        HEIGHTS.title,
      ),
    ]),
  );
  flow.addTable(
    table(
      [
        { head: words('sheet.chamber'), align: 'left' },
        { head: words('sheet.volume'), align: 'right' },
        { head: words('sheet.wait-printed'), align: 'right' },
        { head: words('sheet.gas'), align: 'right' },
        { head: words('sheet.plug-flow'), align: 'right' },
        { head: words('sheet.long-tube'), align: 'right' },
        { head: words('sheet.well-mixed'), align: 'right' },
        { head: words('sheet.reading'), align: 'left' },
      ],
      purge.chambers.map(({ number: chamber, volume, printed, plug, longTube, wellMixed }) => [
        { text: String(chamber), weight: 600 },
        formatFigure(volume, job.units),
        { text: formatFigure(printed.time, job.units), weight: 600 },
        formatFigure(printed.gas, job.units),
        formatFigure(plug.time, job.units),
        longTube === null ? words('sheet.does-not-hold') : formatFigure(longTube.time, job.units),
        formatFigure(wellMixed.time, job.units),
        '_________ ppm',
      ]),
      { width: flow.width },
    ),
  );
  const leak = words('sheet.leak', { limit: formatFigure(purge.leakLimit, job.units) });
  flow.add(
    stacked([
      paragraph(words('sheet.meter-decides'), flow.width, { weight: 600 }),
      paragraph(leak, flow.width, { height: HEIGHTS.small }),
      space(2),
    ]),
  );
}

/** Step 6: the order of the joints, and the numbers for the torch. */
export function weld(flow: Flow, purge: PurgePlan, input: SheetInput, number: number): void {
  const { plan, job } = input;
  const { welding } = plan;
  const numbers =
    welding === null
      ? []
      : [
          {
            name: words('sheet.current'),
            value: words('sheet.current-range', {
              low: Math.round(welding.currentLow.value),
              high: Math.round(welding.currentHigh.value),
            }),
          },
          { name: words('sheet.filler'), value: welding.filler === '' ? words('sheet.no-filler') : welding.filler },
          { name: words('sheet.tacks'), value: formatFigure(welding.tacks, job.units) },
          { name: words('sheet.torch-flow'), value: formatQuantity(job.welding.torchFlow, 'L/min', job.units) },
          { name: words('sheet.welding-flow'), value: formatFigure(purge.weldingFlow, job.units) },
          { name: words('sheet.travel'), value: formatQuantity(job.welding.travelSpeed, 'mm/s', job.units) },
          { name: words('sheet.weld-length'), value: formatFigure(welding.weldLength, job.units) },
          { name: words('sheet.arc-time'), value: formatFigure(welding.arcTime, job.units) },
        ];
  const order: Block[] = (welding?.order ?? []).map((joint) => {
    const chambers = purge.chambers.filter(({ joints }) => joints.includes(joint.number));
    return tick(
      words('sheet.weld-joint', {
        number: joint.number,
        place: place(joint, input),
        chamber: chambers.length === 0 ? '—' : chambers.map((chamber) => chamber.number).join(', '),
      }),
    );
  });
  const begin = stacked([stepHead(number, words('sheet.step-weld'), flow.width), figuresRow(numbers, flow.width)]);
  flow.addTogether([begin, ...order]);
  flow.add(stacked([paragraph(words('sheet.weld-sentence'), flow.width, { height: HEIGHTS.small }), space(2)]));
}

/** Step 7: keep the gas flowing. */
export function hold(flow: Flow, purge: PurgePlan, { job }: SheetInput, number: number): void {
  flow.add(
    stacked([
      stepHead(number, words('sheet.step-hold'), flow.width),
      figuresRow(
        [
          { name: words('sheet.hold'), value: formatFigure(purge.hold, job.units) },
          { name: words('sheet.post-flow'), value: formatQuantity(job.welding.postFlow, 's', job.units) },
          { name: words('sheet.gas-in-all'), value: formatFigure(purge.jobGas, job.units) },
        ],
        flow.width,
      ),
      paragraph(words('sheet.hold-sentence'), flow.width, { height: HEIGHTS.small }),
      space(2),
    ]),
  );
}

/** Step 8: from the coarse grit to the finish that was agreed. */
export function grind(flow: Flow, number: number): void {
  const grits = (['sheet.grit-1', 'sheet.grit-2', 'sheet.grit-3', 'sheet.grit-4', 'sheet.grit-5'] as const).map((key) =>
    tick(words(key)),
  );
  flow.add(
    stacked([
      stepHead(number, words('sheet.step-grind'), flow.width),
      ...grits,
      paragraph(words('sheet.grit-sentence'), flow.width, { height: HEIGHTS.small }),
      space(2),
    ]),
  );
}
