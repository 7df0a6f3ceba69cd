import { Box3, Matrix4, OrthographicCamera, Raycaster, Scene, Vector2, Vector3, WebGLRenderer } from 'three';
import type { MemberPlan } from '../../../server/plan/frame.ts';
import type { FlatPoint } from '../../../server/plan/view.ts';
import type { Size } from '../../state/screen.ts';
import { axesOf, heldBall, scaleOf, type Ball, type Viewpoint } from '../../state/viewpoint.ts';
import { DrawnMember, type Inks, type TubeSize } from './drawn-member.ts';

const vector = ({ x, y, z }: { x: number; y: number; z: number }): Vector3 => new Vector3(x, y, z);

/** A bend's number beside its bend, and where on the screen. */
export type BendLabel = { readonly text: string; readonly at: FlatPoint };

/** A ball round all tubes, about the middle of the box that holds them; null where there is nothing. */
function ballRound(members: readonly DrawnMember[]): Ball | null {
  const box = new Box3();
  for (const { skin } of members) box.expandByObject(skin);
  if (box.isEmpty()) return null;
  const middle = box.getCenter(new Vector3());
  const place = new Vector3();
  let farthest = 0;
  for (const { skin } of members) {
    const { array } = skin.geometry.getAttribute('position');
    for (let at = 0; at < array.length; at += 3)
      farthest = Math.max(farthest, place.fromArray(array, at).distanceToSquared(middle));
  }
  return { middle: { x: middle.x, y: middle.y, z: middle.z }, radius: Math.sqrt(farthest) };
}

/** A canvas cannot be finer than this many dots for each pixel: more is not seen and costs time. */
const FINEST = 2;

/**
 * A frame drawn in space on one canvas. Nothing runs by itself: every `draw` paints once. The caller tells it
 * everything, the scene keeps no viewpoint.
 */
export class SpaceScene {
  readonly #renderer: WebGLRenderer;
  readonly #scene = new Scene();
  readonly #camera = new OrthographicCamera();
  #members: readonly DrawnMember[] = [];
  /** Members of the frame before, kept until the next painting: it takes over their compiled shaders. */
  readonly #gone: DrawnMember[] = [];
  #plans: readonly MemberPlan[] = [];
  #tube: TubeSize = { outsideDiameter: 0, wall: 0 };
  #ball: Ball | null = null;
  #size: Size = { width: 1, height: 1 };
  #viewpoint: Viewpoint | null = null;

  private constructor(canvas: HTMLCanvasElement, context: WebGL2RenderingContext) {
    this.#renderer = new WebGLRenderer({ canvas, context, antialias: true, alpha: true });
    this.#renderer.setClearAlpha(0);
  }

  /** A scene on a canvas; null where the browser has no WebGL 2. */
  static on(canvas: HTMLCanvasElement): SpaceScene | null {
    // kept after painting: the picture is painted once and then stands, on paper too
    const context = canvas.getContext('webgl2', { alpha: true, antialias: true, preserveDrawingBuffer: true });
    return context === null ? null : new SpaceScene(canvas, context);
  }

  /** Builds the tubes anew where the frame is another; the ball that the picture is fitted to is kept if it can be. */
  show(plans: readonly MemberPlan[], tube: TubeSize): void {
    const same = tube.outsideDiameter === this.#tube.outsideDiameter && tube.wall === this.#tube.wall;
    if (plans === this.#plans && same) return;
    this.#plans = plans;
    this.#tube = tube;
    const before = this.#members;
    this.#scene.clear();
    this.#members = plans
      .filter(({ pieces }) => pieces.some(({ length }) => length > 0))
      .map((plan) => new DrawnMember(plan, tube));
    for (const { group } of this.#members) this.#scene.add(group);
    this.#gone.push(...before);
    const now = ballRound(this.#members);
    if (now !== null) this.#ball = heldBall(this.#ball, now);
  }

  paint(inks: Inks, meant: ReadonlySet<string>): void {
    for (const member of this.#members) member.paint(inks, meant.has(member.name));
  }

  draw(viewpoint: Viewpoint, size: Size): void {
    if (this.#ball === null || size.width === 0 || size.height === 0) return;
    this.#viewpoint = viewpoint;
    if (size.width !== this.#size.width || size.height !== this.#size.height) {
      this.#size = size;
      this.#renderer.setPixelRatio(Math.min(FINEST, window.devicePixelRatio));
      this.#renderer.setSize(size.width, size.height, false);
    }
    const scale = scaleOf(this.#ball, viewpoint, size);
    const { right, up, out } = axesOf(viewpoint);
    const smaller = Math.min(size.width, size.height);
    const camera = this.#camera;
    const far = 4 * this.#ball.radius;
    camera.matrixAutoUpdate = false;
    camera.matrix.copy(new Matrix4().makeBasis(vector(right), vector(up), vector(out)));
    const middle = vector(this.#ball.middle)
      .addScaledVector(vector(right), (-viewpoint.aside.right * smaller) / scale)
      .addScaledVector(vector(up), (-viewpoint.aside.up * smaller) / scale);
    camera.matrix.setPosition(middle.addScaledVector(vector(out), far / 2));
    camera.matrixWorldNeedsUpdate = true;
    camera.left = -size.width / 2 / scale;
    camera.right = size.width / 2 / scale;
    camera.top = size.height / 2 / scale;
    camera.bottom = -size.height / 2 / scale;
    camera.near = 0;
    camera.far = far;
    camera.updateProjectionMatrix();
    camera.updateMatrixWorld();
    for (const member of this.#members) member.fit(scale);
    this.#renderer.render(this.#scene, camera);
    this.#forget();
  }

  /** Where a point of the frame is in the picture [px], right and down from its corner, after the last `draw`. */
  placeOf(point: { x: number; y: number; z: number }): FlatPoint {
    const { x, y } = vector(point).project(this.#camera);
    return [((x + 1) / 2) * this.#size.width, ((1 - y) / 2) * this.#size.height];
  }

  /**
   * The numbers of all bends, each on the inside of its bend: the typed points stand on the outside.
   *
   * @param away from the skin of the tube [px]
   */
  bendLabels(away: number): readonly BendLabel[] {
    if (this.#viewpoint === null || this.#ball === null) return [];
    const scale = scaleOf(this.#ball, this.#viewpoint, this.#size);
    return this.#members.flatMap(({ bends, name }) => {
      const rows = this.#plans.find((plan) => plan.name === name)?.bends ?? [];
      return bends.map(({ middle, outward }, index) => ({
        text: String(rows[index]?.number ?? index + 1),
        at: this.placeOf(middle.clone().addScaledVector(outward, -this.#tube.outsideDiameter / 2 - away / scale)),
      }));
    });
  }

  /** The member whose tube is seen at a place of the picture [px]; null where there is only paper. */
  memberAt([x, y]: FlatPoint): string | null {
    const ray = new Raycaster();
    ray.setFromCamera(new Vector2((x / this.#size.width) * 2 - 1, 1 - (y / this.#size.height) * 2), this.#camera);
    const hit = ray.intersectObjects(this.#members.map(({ skin }) => skin), false)[0]; // prettier-ignore
    return this.#members.find(({ skin }) => skin === hit?.object)?.name ?? null;
  }

  #forget(): void {
    for (const member of this.#gone.splice(0)) member.dispose();
  }

  /** Gives everything back to the graphics card; the canvas is of no use afterwards. */
  dispose(): void {
    this.#forget();
    for (const member of this.#members) member.dispose();
    this.#renderer.dispose();
    this.#renderer.forceContextLoss();
  }
}
