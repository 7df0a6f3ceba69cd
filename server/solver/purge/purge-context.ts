import type { Job } from '../../job/job.ts';
import type { Purge } from '../../job/purge.ts';
import type { Finding } from '../../plan/finding.ts';
import { finding } from '../finding.ts';
import type { FrameGeometry, MemberGeometry } from '../frame/frame-geometry.ts';
import { hasDirection, heldUp } from '../frame/held-up.ts';
import type { Vector3 } from '../geometry/vector.ts';
import type { WeldWork } from '../welding/weld-work.ts';
import type { Opening, SaddleHole, Site } from './bores.ts';
import { gasOxygen } from './gas.ts';
import { openingsOf } from './openings.ts';
import { fromAir, stepQuantile, wellMixedVolumes, type OxygenStep } from './purge-models.ts';
import { saddleHoles, strayExceptions } from './saddle-holes.ts';
import { typedPlaces, type TypedPlaces } from './typed-places.ts';
import { weldHeatSites } from './weld-heat-sites.ts';

/** Everything that the purge of a frame for its welds is worked out from. */
export type PurgeContext = {
  readonly job: Job;
  readonly purge: Purge;
  readonly frame: FrameGeometry;
  readonly members: readonly MemberGeometry[];
  readonly welds: readonly WeldWork[];
  /** Bore of the tube [mm], and its area [mm²]. */
  readonly bore: number;
  readonly area: number;
  /** Bore of a vent where nothing narrower is drilled: as typed, and no wider than the tube [mm]. */
  readonly ventBore: number;
  /** Unit vector that points up while the frame is held. */
  readonly up: Vector3;
  readonly sites: readonly Site[];
  readonly holes: readonly SaddleHole[];
  readonly openings: readonly Opening[];
  readonly typed: TypedPlaces;
  /** From air to the target; null where the gas itself holds as much. */
  readonly filling: Filling | null;
  /** What is wrong with the places that are typed. */
  readonly findings: readonly Finding[];
};

/** The step in oxygen [ppm], the well-mixed volumes that it takes, and its quantile. */
export type Filling = { readonly step: OxygenStep; readonly volumes: number; readonly quantile: number };

/** Least bore that is reckoned with [mm]; a tube without one is stopped before it gets here. */
const LEAST_BORE = 1e-3;

/** Looks at a frame and its welds for their purge. */
export function purgeContext(job: Job, frame: FrameGeometry, welds: readonly WeldWork[]): PurgeContext {
  const { purge, tube } = job;
  const { members } = frame;
  const bore = Math.max(LEAST_BORE, tube.outsideDiameter - 2 * tube.wall);
  const findings: Finding[] = [];
  if (!hasDirection(purge.up))
    findings.push(finding('up-no-direction', 'stop', '/purge/up', {}, { field: '/purge/up/z', value: 1 }));
  const up = heldUp(purge.up);
  const ventBore = Math.min(purge.ventBore, bore);
  const openings = openingsOf({ purge, frame, welds, up, bore, ventBore });
  const typed = typedPlaces(purge, members, openings);
  findings.push(...strayExceptions(members, purge.holes), ...openings.findings, ...typed.findings);
  return {
    job,
    purge,
    frame,
    members,
    welds,
    bore,
    area: (Math.PI * bore ** 2) / 4,
    ventBore,
    up,
    sites: weldHeatSites(welds, members),
    holes: saddleHoles(members, purge.holes),
    openings: openings.all,
    typed: typed.places,
    filling: fillingOf(purge.targetOxygen, gasOxygen(purge.gas).value),
    findings,
  };
}

function fillingOf(target: number, supply: number): Filling | null {
  if (target <= supply) return null;
  const step = fromAir({ target, supply });
  return { step, volumes: wellMixedVolumes(step), quantile: stepQuantile(step) };
}
