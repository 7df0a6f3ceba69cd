import type { Job } from '../job/job.ts';
import { closeParts, formatClosely } from '../language/length-format.ts';
import { formatFigure } from '../language/quantity-format.ts';
import { words, wordsOf } from '../language/words.ts';
import type { Figure } from '../plan/figure.ts';
import type { Plan } from '../plan/plan.ts';
import type { Procedure, Weld, WeldPosition } from '../plan/welding.ts';
import type { SheetInput } from './sheet-input.ts';
import { table, type Cell, type Column, type Table } from './table.ts';
import { weldPlace } from './tube-place-words.ts';

const HEIGHT = 2;

/** The position by ISO 6947 with the American code behind it. */
export const positionWords = ({ code, american }: WeldPosition): string =>
  american === '' ? code : words('sheet.position-of', { code, american });

/** The preparation with its angle and land, where it has them. */
export function preparationWords({ preparation, bevel, land }: Weld, { units }: Job): string {
  const name = wordsOf('preparation', preparation);
  if (bevel === null) return name;
  return words('sheet.bevel-of', {
    name,
    angle: formatFigure(bevel, units),
    land: land === null ? '—' : formatClosely(land.value, units),
  });
}

/** '2 then 4, 1, 3' as the quarters are welded one after the other. */
export const quarterWords = (quarters: readonly number[]): string => quarters.join(' ');

export const fillerWords = ({ filler, fillerDiameter, process }: Procedure, { units }: Job): string =>
  process === '142' || fillerDiameter === null
    ? words('sheet.no-filler')
    : words('sheet.filler-of', { filler, diameter: formatClosely(fillerDiameter.value, units) });

/** The joints of a set-up, a row each: what is looked at before the arc, set for it, and measured after the tacks. */
export function weldTable(welds: readonly Weld[], input: SheetInput, width: number): Table {
  const { job, plan } = input;
  const { units } = job;
  const close = (figure: Figure): string => closeParts(Number(figure.value.toFixed(2)), units).number;
  const columns: Column[] = [
    { head: words('sheet.weld-name'), align: 'left' },
    { head: words('sheet.place'), align: 'left' },
    { head: words('sheet.preparation'), align: 'left' },
    { head: words('sheet.gap'), align: 'right' },
    { head: words('sheet.tack-count'), align: 'left' },
    { head: words('sheet.quarters'), align: 'left' },
    { head: words('sheet.position'), align: 'left' },
    { head: words('sheet.current-set'), align: 'right' },
    { head: words('sheet.hi-lo-found', { unit: lengthUnit(job) }), align: 'right' },
    { head: words('sheet.hi-lo-polish'), align: 'right' },
    { head: words('sheet.hi-lo-standard', { level: job.welding.quality }), align: 'right' },
  ];
  const rows = welds.map((weld): Cell[] => {
    const procedure = procedureOf(weld, plan);
    const { misfit, tacks } = weld;
    const misfits = misfit === null ? ['—', '—', '—'] : [misfit.hiLo, misfit.polish, misfit.standard].map(close);
    return [
      { text: weld.name, weight: 600 },
      weldPlace(weld, input),
      preparationWords(weld, job),
      formatClosely(Number(weld.gap.value.toFixed(2)), units),
      words('sheet.tacks-of', {
        count: Math.round(tacks.count.value),
        length: formatClosely(Number(tacks.length.value.toFixed(1)), units),
      }),
      { text: quarterWords(quartersOf(weld, plan)), weight: 600 },
      positionWords(weld.position),
      { text: procedure === undefined ? '—' : formatFigure(procedure.current, units), weight: 600 },
      ...misfits,
    ];
  });
  return table(
    columns,
    [...rows, [{ text: `${fillersOf(welds, input)} ${torchOf(welds, input)}`, weight: 400, span: true }]],
    {
      width,
      height: HEIGHT,
      headLines: 2,
    },
  );
}

/** What the torch is set to: once for the forms of weld that have it alike. */
function torchOf(welds: readonly Weld[], { plan, job }: SheetInput): string {
  const forms = new Set(welds.map(({ form }) => form));
  const settings = new Map<string, string[]>();
  for (const one of (plan.welding?.procedures ?? []).filter(({ form }) => forms.has(form))) {
    const set = words('sheet.torch-set', {
      flow: formatFigure(one.torchFlow, job.units),
      after: formatFigure(one.postFlow, job.units),
      electrode: formatClosely(one.electrode.value, job.units),
      cup: formatClosely(one.cup.value, job.units),
    });
    settings.set(set, [...(settings.get(set) ?? []), wordsOf('sheet.form', one.form)]);
  }
  return [...settings].map(([set, names]) => words('sheet.torch-row', { forms: names.join(', '), set })).join(' ');
}

/** What is fed into which welds. */
function fillersOf(welds: readonly Weld[], { plan, job }: SheetInput): string {
  const fed = new Map<string, string[]>();
  for (const weld of welds) {
    const procedure = procedureOf(weld, plan);
    const filler = procedure === undefined ? '—' : fillerWords(procedure, job);
    fed.set(filler, [...(fed.get(filler) ?? []), weld.name]);
  }
  const list = [...fed].map(([filler, names]) => words('sheet.filler-weld', { welds: names.join(', '), filler }));
  return words('sheet.filler-row', { list: list.join('; ') });
}

export const lengthUnit = ({ units }: Job): string => (units.length === 'mm' ? 'mm' : 'in');

/** The settings of a weld's form. */
export const procedureOf = ({ form }: Weld, { welding }: Plan): Procedure | undefined =>
  welding?.procedures.find((one) => one.form === form);

/** The quarters of a weld in their order. */
export const quartersOf = ({ name }: Weld, { welding }: Plan): readonly number[] =>
  welding?.order.find(({ weld }) => weld === name)?.quarters ?? [];
