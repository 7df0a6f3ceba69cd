import type { PlacedJoint } from '../../server/job/closing.ts';
import type { FlatPoint } from '../../server/plan/view.ts';
import type { JobHistory } from './job-history.svelte.ts';
import { heldWithin, nearestStation, steppedBy, type PointedLine, type Stretch } from './joint-places.ts';
import { roundedPlace, withJointAt, type JointOfMember } from './placed-joints.ts';

/** A joint as it is taken hold of: which one, where all of them stand, and the line it can be moved along. */
export type Grip = {
  readonly joint: JointOfMember;
  readonly joints: readonly PlacedJoint[];
  readonly index: number;
  readonly line: PointedLine;
  readonly stretches: readonly Stretch[];
};

/** A joint on its way along its member. The job follows at once, the plan as fast as it can; one drag is one undo. */
export class JointDrag {
  grip: Grip | null = $state.raw(null);
  /** Where the joint stands now, and whether it has been moved since it was taken hold of. */
  station = $state(0);
  moved = $state(false);
  /** From the place under the finger to the joint when it was taken hold of, along the member: it does not jump. */
  #lead = 0;
  #count = 0;
  readonly #session: { readonly history: JobHistory };

  constructor(session: { readonly history: JobHistory }) {
    this.#session = session;
  }

  take(grip: Grip, at: FlatPoint): void {
    const joint = grip.joints[grip.index];
    if (joint === undefined) return;
    this.#session.history.pause();
    this.grip = grip;
    this.station = joint.station;
    this.moved = false;
    this.#lead = joint.station - nearestStation(grip.line, at);
    this.#count += 1;
  }

  move(at: FlatPoint): void {
    if (this.grip === null) return;
    const { joints, index, line, stretches } = this.grip;
    const { history } = this.#session;
    const found = roundedPlace(nearestStation(line, at) + this.#lead, history.job.units);
    const station = heldWithin(stretches, Math.max(0, found));
    if (station === this.station) return;
    this.station = station;
    this.moved = true;
    history.change(withJointAt(history.job, joints, index, station), `drag ${String(this.#count)}`);
  }

  /** Moves a joint by a key [mm]; keys that follow each other on the same joint are one undo. */
  step({ joint, joints, index, stretches }: Grip, by: number): void {
    const placed = joints[index];
    if (placed === undefined) return;
    const { history } = this.#session;
    const station = Math.max(0, steppedBy(stretches, placed.station, by));
    if (station === placed.station) return;
    history.change(withJointAt(history.job, joints, index, station), `step ${joint.member} ${String(joint.rank)}`);
  }

  /** Lets go and puts the joint back where it was taken hold of. */
  giveUp(): void {
    if (this.grip === null) return;
    if (this.moved) this.#session.history.undo();
    this.end();
  }

  end(): void {
    this.grip = null;
    this.#session.history.pause();
  }
}
