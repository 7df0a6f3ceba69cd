import { Group, LineSegments, Mesh, type BufferGeometry } from 'three';
import type { MemberPlan } from '../../../server/plan/frame.ts';
import { colourOf, outlineMaterial, skinMaterial } from './ink-material.ts';
import { MemberCurve } from './member-curve.ts';
import { edgeGeometry, endGeometry, tubeGeometry } from './tube-geometry.ts';

/** Colours of the style sheet, as it writes them. */
export type Inks = {
  readonly ink: string;
  readonly paper: string;
  readonly line: string;
  readonly straw: string;
  readonly blue: string;
};

/** Outside diameter and wall of the job's tube [mm]. */
export type TubeSize = { readonly outsideDiameter: number; readonly wall: number };

/** Width of an outline on the screen [px]: of a member, and of the one that is meant. */
const OUTLINE = { plain: 1.5, meant: 3.5 };

/** One member as a drawn tube: its skin, its outline, and its cut ends. */
export class DrawnMember {
  readonly name: string;
  /** Middle of every bend and the way out of it. */
  readonly bends: ReturnType<MemberCurve['bends']>;
  readonly group = new Group();
  readonly skin: Mesh;
  readonly #skin = skinMaterial();
  readonly #outline = outlineMaterial();
  readonly #bore = outlineMaterial();
  readonly #edge = outlineMaterial();
  readonly #geometries: BufferGeometry[] = [];
  #meant = false;

  constructor(member: MemberPlan, { outsideDiameter, wall }: TubeSize) {
    this.name = member.name;
    const curve = new MemberCurve(member.pieces);
    this.bends = curve.bends();
    const radius = outsideDiameter / 2;
    const skin = this.#kept(tubeGeometry(curve, radius));
    this.skin = new Mesh(skin, this.#skin);
    this.group.add(this.skin, new Mesh(skin, this.#outline));
    if (member.closed) return;
    const bore = Math.max(0, radius - wall);
    const wallAtEnds = new Mesh(this.#kept(endGeometry(curve, bore, radius)), this.#skin);
    this.#bore.side = this.#skin.side;
    const boreAtEnds = new Mesh(this.#kept(endGeometry(curve, 0, bore)), this.#bore);
    this.group.add(wallAtEnds, boreAtEnds, new LineSegments(this.#kept(edgeGeometry(curve, radius)), this.#edge));
  }

  #kept(geometry: BufferGeometry): BufferGeometry {
    this.#geometries.push(geometry);
    return geometry;
  }

  /** Inks the member; the one that is meant has a thick line of another colour, and straw on its skin. */
  paint(inks: Inks, meant: boolean): void {
    this.#meant = meant;
    set(this.#skin, 'lit', colourOf(meant ? inks.straw : inks.paper));
    set(this.#skin, 'shade', colourOf(inks.line));
    set(this.#outline, 'ink', colourOf(meant ? inks.blue : inks.ink));
    set(this.#bore, 'ink', colourOf(inks.ink));
    set(this.#edge, 'ink', colourOf(meant ? inks.blue : inks.ink));
  }

  /** Holds the line at its width on the screen. @param scale pixels for each millimetre */
  fit(scale: number): void {
    set(this.#outline, 'width', (this.#meant ? OUTLINE.meant : OUTLINE.plain) / scale);
  }

  dispose(): void {
    for (const geometry of this.#geometries) geometry.dispose();
    for (const material of [this.#skin, this.#outline, this.#bore, this.#edge]) material.dispose();
  }
}

function set(material: { uniforms: Record<string, { value: unknown }> }, name: string, value: unknown): void {
  const uniform = material.uniforms[name];
  if (uniform === undefined) throw new Error(`The material has no ${name}.`);
  uniform.value = value;
}
