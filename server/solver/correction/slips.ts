import type { SlipScore } from '../../plan/correction.ts';
import { figure, input } from '../figure.ts';
import type { FrameGeometry } from '../frame/frame-geometry.ts';
import { readHoop, type HoopReadings } from './hoop-readings.ts';
import type { Misreading } from './misreadings.ts';

/** Root mean square, in tapes, up to which a slip explains the readings: two standard deviations (common practice). */
const EXPLAINED = 2;

/**
 * Ranks the known slips by how well each predicts the readings of a hoop that came back. Each was computed by bending
 * the wrong marks through the path model, or by reading the sketch the wrong way; a leg that the slip leaves longer
 * than wanted is compared as it left the machine.
 *
 * @param found every misreading of the wanted frame with the frame that it makes
 * @param tape accuracy of the tape [mm]
 * @returns best first; empty for a shape that is not a hoop
 */
export function scoreSlips(found: readonly Misreading[], cameBack: FrameGeometry, tape: number): SlipScore[] {
  const measuredLine = cameBack.members.find(({ name }) => name === 'hoop')?.centreline;
  const measured = measuredLine === undefined ? undefined : readHoop(measuredLine);
  if (measured === undefined) return [];
  return found
    .filter(({ field }) => field === '' || field === '/frame/width')
    .flatMap(({ slip, made }) => {
      const line = made?.rebent.get('hoop') ?? made?.drawn.members.find(({ name }) => name === 'hoop')?.centreline;
      const predicted = line === undefined ? undefined : readHoop(line);
      return predicted === undefined ? [] : [scoreOf(slip, predicted, measured, tape)];
    })
    .sort((a, b) => a.misfit.value - b.misfit.value)
    .filter(({ key }, place, all) => all.findIndex((one) => one.key === key) === place);
}

function scoreOf(key: SlipScore['key'], predicted: HoopReadings, measured: HoopReadings, accuracy: number): SlipScore {
  const tape = Math.max(accuracy, 0.1);
  const keys = ['width-at-corners', 'width-at-feet', 'left-leg', 'right-leg'] as const;
  const sum = keys.reduce((total, one) => total + ((predicted[one] - measured[one]) / tape) ** 2, 0);
  const misfit = Math.sqrt(sum / keys.length);
  return {
    key,
    misfit: figure(
      misfit,
      'ratio',
      'm = √(Σ ((p − r) / a)² / n)',
      [input('a', 'tape', accuracy, 'mm'), input('n', 'readings', keys.length, 'count')],
      ['path-model'],
    ),
    explains: misfit <= EXPLAINED,
    predicted: keys.map((one) => ({ key: one, index: 0, value: predicted[one], measured: measured[one] })),
  };
}
