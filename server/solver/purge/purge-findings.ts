import type { Purge, Welding } from '../../job/purge.ts';
import type { Tube } from '../../job/tube.ts';
import type { Finding } from '../../plan/finding.ts';
import type { PurgePlan } from '../../plan/purge.ts';
import { finding } from '../finding.ts';
import { heatInput } from '../welding/heat.ts';
import { peakRise } from './dam-heat.ts';
import type { Pocket } from './pockets.ts';
import { flowAtReynolds, LAMINAR_LIMIT } from './purge-models.ts';
import { airToHold, ALARM_OXYGEN, SAFE_OXYGEN } from './room-oxygen.ts';
import { copedEnds, openEnds } from './sites.ts';
import { HIGHEST_PRESSURE, USUAL_PRESSURE, ventBore } from './vent.ts';

/** Nearest and usual distance of a dam from the weld [mm]: paper and tape char nearer; common practice, no source. */
const DAM_DISTANCE = { least: 100, usual: 150 } as const;
/** Targets that colour charts go by [ppm]. */
const USUAL_TARGETS = [20, 50, 100, 500, 1000, 5000, 10_000, 50_000] as const;

/** A target that the gas itself does not reach; the way out is the next usual target that it does. */
export function targetBelowGas(target: number, supply: number): Finding | null {
  if (target > supply) return null;
  const next = USUAL_TARGETS.find((usual) => usual > supply);
  return finding(
    'target-below-gas',
    'stop',
    '/purge/targetOxygen',
    { value: target, low: supply },
    next === undefined ? null : { field: '/purge/targetOxygen', value: next },
  );
}

/**
 * Bores that gas cannot pass through by open ends. One that the weld closes is open there until then, so a needle at
 * the gap can feed it; one that nothing opens must not be welded before it is vented, and holes under its coped ends
 * vent it into its partners' bores. Between dams one open end does, since both hoses go in there.
 */
export function closedBores(pockets: readonly Pocket[], { extent, ventHoles }: Purge): Finding[] {
  const enough = extent === 'dams' ? 1 : 2;
  const members = [...new Set(pockets.map(({ member }) => member))];
  return members.flatMap((member) => {
    const open = openEnds(member);
    if (open >= enough) return [];
    const cut = pockets.flatMap(({ sites }) => sites).find((site) => site.member === member && site.cut);
    const holes = copedEnds(member);
    if (ventHoles === 'coped-ends' && open + holes >= enough)
      return [finding('bore-by-vent-holes', 'caution', '/purge/ventHoles', { member: member.name, holes })];
    const grade = open > 0 || cut !== undefined ? 'caution' : 'stop';
    const data = { member: member.name, openEnds: open, ...(cut === undefined ? {} : { joint: cut.joint }) };
    const wayOut = open + holes >= enough ? { field: '/purge/ventHoles', value: 'coped-ends' } : null;
    return [finding('closed-chamber', grade, '/purge/ventHoles', data, wayOut)];
  });
}

/** Dams so near that the weld may burn them, with the rise of temperature there [K]. */
export function nearDams(work: { purge: Purge; welding: Welding; tube: Tube; pockets: readonly Pocket[] }): Finding[] {
  const { purge, welding, tube, pockets } = work;
  if (purge.damDistance >= DAM_DISTANCE.least || pockets.every(({ dams }) => dams.length === 0)) return [];
  const heat = heatInput({ wall: tube.wall, travelSpeed: welding.travelSpeed });
  return [
    finding(
      'dam-near-weld',
      'caution',
      '/purge/damDistance',
      {
        value: purge.damDistance,
        low: DAM_DISTANCE.least,
        rise: Math.round(peakRise({ heat, wall: tube.wall }, purge.damDistance)),
      },
      { field: '/purge/damDistance', value: DAM_DISTANCE.usual },
    ),
  ];
}

/** What the flows, the bottle and the room have to say. */
export function gasFindings(
  plan: PurgePlan,
  { purge, welding, bore, usable }: { purge: Purge; welding: Welding; bore: number; usable: number },
): Finding[] {
  const findings: Finding[] = [];
  const { value: pressure } = plan.ventPressure;
  if (pressure > USUAL_PRESSURE) {
    const wider = Math.ceil(10 * ventBore({ flow: purge.weldingFlow, pressure: USUAL_PRESSURE })) / 10;
    findings.push(
      finding(
        'vent-pressure-high',
        pressure > HIGHEST_PRESSURE ? 'stop' : 'caution',
        '/purge/ventBore',
        { value: pressure, high: USUAL_PRESSURE },
        { field: '/purge/ventBore', value: wider },
      ),
    );
  }
  if (plan.reynolds.value > LAMINAR_LIMIT) {
    const slower = Math.floor(10 * flowAtReynolds(bore, LAMINAR_LIMIT)) / 10;
    const wayOut = slower > 0 ? { field: '/purge/prePurgeFlow', value: slower } : null;
    const data = { value: plan.reynolds.value, high: LAMINAR_LIMIT };
    findings.push(finding('purge-flow-turbulent', 'caution', '/purge/prePurgeFlow', data, wayOut));
  }
  if (plan.jobGas.value > usable) {
    const data = { value: plan.jobGas.value, high: usable };
    findings.push(finding('bottle-not-enough', 'caution', '/purge/bottle/gaugePressure', data));
  }
  const { value: oxygen } = plan.roomOxygenFan;
  if (oxygen < ALARM_OXYGEN) {
    const largest = Math.max(purge.prePurgeFlow, purge.weldingFlow + welding.torchFlow);
    const air = Math.ceil(airToHold({ release: largest, oxygen: SAFE_OXYGEN }));
    const wayOut = { field: '/purge/room/fanFlow', value: air };
    const data = { value: oxygen, low: ALARM_OXYGEN };
    findings.push(finding('room-oxygen-low', 'stop', '/purge/room/fanFlow', data, wayOut));
  }
  const still = { value: plan.roomOxygenStill.value, low: ALARM_OXYGEN };
  findings.push(finding('argon-caution', 'note', '/purge/room/volume', still));
  return findings;
}
