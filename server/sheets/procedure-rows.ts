import { formatClosely, formatLength } from '../language/length-format.ts';
import { formatFigure } from '../language/quantity-format.ts';
import { words, wordsOf } from '../language/words.ts';
import type { Figure } from '../plan/figure.ts';
import type { Procedure, Weld } from '../plan/welding.ts';
import type { SheetInput } from './sheet-input.ts';
import { namesOf } from './weld-signs.ts';
import { positionWords, preparationWords, quarterWords, quartersOf } from './weld-table.ts';

/** A heading of the procedure with what stands under it; `open` is to be filled in by hand. */
export type ProcedureRow = { readonly head: string; readonly said: string; readonly open?: string };

const distinct = (texts: readonly string[]): string => [...new Set(texts)].join('; ');

/** The headings of ISO 15609-1 in their order, for one form of weld, with what the plan knows under each. */
export function procedureRows(procedure: Procedure, welds: readonly Weld[], input: SheetInput): ProcedureRow[] {
  const { job, plan } = input;
  const { tube, units } = job;
  const show = (figure: Figure): string => formatFigure(figure, units);
  const close = (mm: number): string => formatClosely(Number(mm.toFixed(2)), units);
  const grade = tube.grade.from === 'catalogue' ? tube.grade.key : tube.grade.name;
  const rod = procedure.process === '141' ? procedure.fillerDiameter : null;
  const { purge, welding } = plan;
  return [
    { head: words('procedure.maker'), said: '', open: '' },
    { head: words('procedure.number'), said: '', open: words('procedure.record') },
    {
      head: words('procedure.parent'),
      said: tube.heat === '' ? grade : words('procedure.heat', { grade, heat: tube.heat }),
      open: words('procedure.certificate'),
    },
    { head: words('procedure.dimensions'), said: dimensionsOf(procedure, input) },
    {
      head: words('procedure.process'),
      said: words(procedure.process === '141' ? 'procedure.process-141' : 'procedure.process-142'),
    },
    { head: words('procedure.position'), said: distinct(welds.map(({ position }) => positionWords(position))) },
    {
      head: words('procedure.preparation'),
      said: distinct(
        welds.map((weld) =>
          words('procedure.prepared', {
            faces: preparationWords(weld, job),
            gap: close(weld.gap.value),
            square: close(weld.squareness.value),
          }),
        ),
      ),
    },
    {
      head: words('procedure.technique'),
      said: [
        words('procedure.runs', { runs: show(procedure.runs) }),
        distinct(
          welds.map(({ tacks }) =>
            words('procedure.tacks', {
              count: Math.round(tacks.count.value),
              length: formatLength(tacks.length.value, units),
            }),
          ),
        ),
        distinct(
          welds.map((weld) =>
            words('procedure.quarters', { weld: weld.name, quarters: quarterWords(quartersOf(weld, plan)) }),
          ),
        ),
      ].join('; '),
    },
    { head: words('procedure.back-gouging'), said: words('procedure.none') },
    {
      head: words('procedure.backing'),
      said: distinct(
        welds.map(({ backing }) =>
          backing === 'sleeve' && welding !== null && welding.sleeve !== null
            ? words('procedure.backing-sleeve', { wall: close(welding.sleeve.wall.value) })
            : words('procedure.backing-gas'),
        ),
      ),
    },
    {
      head: words('procedure.filler'),
      said:
        rod === null
          ? words('procedure.none')
          : words('sheet.filler-of', { filler: procedure.filler, diameter: close(rod.value) }),
      ...(rod === null ? {} : { open: words('procedure.batch') }),
    },
    {
      head: words('procedure.electrical'),
      said: words('procedure.current', {
        current: show(procedure.current),
        low: Math.round(procedure.currentLow.value),
        high: Math.round(procedure.currentHigh.value),
        voltage: show(procedure.voltage),
        speed: show(procedure.travelSpeed),
      }),
    },
    { head: words('procedure.preheat'), said: words('procedure.none') },
    { head: words('procedure.interpass'), said: words('procedure.at-most', { value: show(procedure.interpass) }) },
    { head: words('procedure.post-heat'), said: words('procedure.none') },
    {
      head: words('procedure.shielding'),
      said: words('procedure.argon', { gas: gasWords(input) }),
      open: words('procedure.gas-batch'),
    },
    {
      head: words('procedure.root-gas'),
      said:
        purge === null
          ? '—'
          : words('procedure.root', {
              oxygen: show(purge.targetOxygen),
              flow: show(purge.weldingFlow),
              closing: show(purge.closingFlow),
              hold: show(purge.hold),
            }),
    },
    {
      head: words('procedure.heat-input'),
      said: words('procedure.heat-of', { heat: show(procedure.heatInput), energy: show(procedure.arcEnergy) }),
    },
    {
      head: words('procedure.electrode'),
      said: words('procedure.electrode-of', {
        code: procedure.electrodeCode,
        diameter: close(procedure.electrode.value),
      }),
    },
    { head: words('procedure.nozzle'), said: words('procedure.bore', { bore: close(procedure.cup.value) }) },
    {
      head: words('procedure.gas-flow'),
      said: words('procedure.flow-of', {
        flow: show(procedure.torchFlow),
        before: show(procedure.preFlow),
        after: show(procedure.postFlow),
      }),
    },
    {
      head: words('procedure.remarks'),
      said: [
        procedure.proved === '' ? words('procedure.not-proved') : words('procedure.proved', { on: procedure.proved }),
        words('procedure.holds-for', { welds: namesOf(welds) }),
      ].join(' '),
      open: '',
    },
  ];
}

/** The tube, and what it is welded to where that is not the same tube. */
function dimensionsOf({ form }: Procedure, { job }: SheetInput): string {
  const { units, tube, fixing } = job;
  const size = words('procedure.tube', {
    diameter: formatClosely(tube.outsideDiameter, units),
    wall: formatClosely(tube.wall, units),
  });
  if (form !== 'pad') return words(form === 'saddle' ? 'procedure.saddle-on' : 'procedure.tube-to-tube', { size });
  const plates = fixing.flatMap((point) =>
    point.fixing === 'pad' && point.plate !== null ? [point.plate.thickness] : [],
  );
  const thick = distinct(plates.map((plate) => formatClosely(plate, units)));
  return words('procedure.on-plate', { size, plate: thick === '' ? '—' : thick });
}

const gasWords = ({ job }: SheetInput): string =>
  job.purge.gas.from === 'grade'
    ? words('procedure.gas-grade', { grade: job.purge.gas.key })
    : words('procedure.gas-certificate', { oxygen: Math.round(job.purge.gas.oxygen) });

/** A form of weld as the title says it. */
export const formTitle = ({ form }: Procedure): string => wordsOf('procedure.form', form);
