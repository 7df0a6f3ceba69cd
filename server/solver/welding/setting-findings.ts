import type { Grade } from '../../job/tube.ts';
import type { Finding } from '../../plan/finding.ts';
import { finding } from '../finding.ts';
import { electrodeFor, electrodeRange } from './electrodes.ts';
import { isDuplex } from './filler.ts';
import { tightGap } from './preparation.ts';
import type { SettingWork, WeldSetting } from './settings.ts';
import { THICK_PLATE } from './start-current.ts';

/** Heat of a 22Cr duplex weld at most [kJ/mm], 0.5 to 2.5: from memory; the lower end is for plate, not for thin tube. */
const DUPLEX_HEAT = 2.5;

const between = (value: number, { low, high }: { low: number; high: number }): boolean => value >= low && value <= high;

/** What there is to say about the settings of the forms of weld that a job has. */
export function settingFindings(settings: readonly WeldSetting[], work: SettingWork): Finding[] {
  const findings = settings.flatMap((setting) => [
    ...fillerFindings(setting, work),
    ...currentFindings(setting, work),
    ...heatFindings(setting, work),
    ...plateFindings(setting, work),
  ]);
  const [first] = settings;
  if (first !== undefined && isDuplex(work.tube.grade)) {
    const grade = nameOf(work.tube.grade);
    findings.push(finding('duplex-gas', 'note', `/welding/${first.form}/torchFlow`, { grade }));
  }
  const open = settings.filter(({ form }) => work.welding[form].provedOn === '').map(({ form }) => form);
  if (open[0] !== undefined) {
    const data = { forms: open.join(', ') };
    findings.push(finding('settings-not-proved', 'note', `/welding/${open[0]}/provedOn`, data));
  }
  return findings;
}

const nameOf = (grade: Grade): string => (grade.from === 'own' ? grade.name : grade.key);

/** Whether the plate under a pad is so thick that its current has to be found on a test piece; not where it was. */
function plateFindings({ form }: WeldSetting, { welding, tube, plate = 0 }: SettingWork): Finding[] {
  const high = THICK_PLATE * tube.wall;
  if (form !== 'pad' || plate <= high || welding.pad.provedOn !== '') return [];
  return [finding('pad-thick-plate', 'caution', '/welding/pad/provedOn', { value: plate, high, wall: tube.wall })];
}

/** Whether a weld has the filler that its grade and its gap ask for. */
function fillerFindings({ form, process, filler }: WeldSetting, { tube, gap }: SettingWork): Finding[] {
  const root = `/welding/${form}`;
  const { grade } = tube;
  const name = nameOf(grade);
  if (process === '141')
    return filler === '' ? [finding('no-filler-for-grade', 'note', `${root}/filler`, { form, grade: name })] : [];
  const field = `${root}/process`;
  // what the plan chooses itself is always with filler here
  const wayOut = { field, value: null };
  const findings: Finding[] = [];
  if (isDuplex(grade))
    findings.push(finding('autogenous-not-for-grade', 'caution', field, { form, grade: name }, wayOut));
  const high = tightGap(tube.wall);
  if (form === 'butt' && gap > high)
    findings.push(finding('autogenous-with-gap', 'caution', field, { form, value: gap, high }, wayOut));
  return findings;
}

/** Whether the current is one that the wall stands and the electrode carries; what the plan begins with always is. */
function currentFindings({ form, current, electrode, start }: WeldSetting, { welding }: SettingWork): Finding[] {
  const typed = welding[form];
  const field = `/welding/${form}/current`;
  const findings: Finding[] = [];
  const carried = electrodeRange(electrode);
  if (!between(current, carried)) {
    const data = { form, value: current, low: carried.low, high: carried.high, diameter: electrode };
    if (typed.electrode !== null && between(current, electrodeRange(electrodeFor(current)))) {
      const mended = `/welding/${form}/electrode`;
      findings.push(finding('electrode-range', 'caution', mended, data, { field: mended, value: null }));
    } else if (typed.current !== null) {
      findings.push(finding('electrode-range', 'caution', field, data, { field, value: null }));
    }
  }
  const band = { low: start.least, high: start.most };
  if (typed.current !== null && !between(current, band)) {
    const wayOut = { field, value: null };
    findings.push(finding('current-out-of-band', 'caution', field, { form, value: current, ...band }, wayOut));
  }
  return findings;
}

/** Whether a duplex gets more heat than it stands; the way out is the speed that brings just enough, 0.1 mm/s by 0.1. */
function heatFindings({ form, heat, travelSpeed }: WeldSetting, { tube }: SettingWork): Finding[] {
  const value = heat / 1000;
  if (!isDuplex(tube.grade) || value <= DUPLEX_HEAT) return [];
  const field = `/welding/${form}/travelSpeed`;
  const wayOut = { field, value: Math.ceil((10 * travelSpeed * value) / DUPLEX_HEAT) / 10 };
  return [finding('heat-over-grade', 'caution', field, { form, value, high: DUPLEX_HEAT }, wayOut)];
}
