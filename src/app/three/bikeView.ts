import {
  Box3,
  DirectionalLight,
  Group,
  HemisphereLight,
  type Matrix4,
  Mesh,
  NeutralToneMapping,
  PCFShadowMap,
  PerspectiveCamera,
  PlaneGeometry,
  Raycaster,
  Scene,
  ShadowMaterial,
  Spherical,
  Vector2,
  Vector3,
  WebGLRenderer,
} from 'three';
import { OrbitControls } from 'three/addons/controls/OrbitControls.js';
import { type DrawnPart, disposeSolid, markSolid, solidOf } from './solid.ts';

/** Where one looks from: turn about the vertical from behind-left, and down from straight above [rad]. */
export type Standpoint = 'corner' | 'side' | 'front' | 'top';

const FIELD_OF_VIEW = 26;
const STANDPOINTS: Readonly<Record<Standpoint, Vector3>> = {
  corner: new Vector3(1, 1.25, 0.55),
  side: new Vector3(0, 1, 0.02),
  front: new Vector3(1, 0, 0.02),
  // Not quite straight down, where left and right would be undefined.
  top: new Vector3(0, 0.001, 1),
};
const NEAREST_TO_POLE = 0.02;
/** Share of the picture that the bike's box may fill. */
const FILLED = 0.94;

/** Draws meshes that were made elsewhere; knows nothing of bikes. Draws only when something changed. */
export class BikeView {
  readonly #renderer: WebGLRenderer;
  readonly #scene = new Scene();
  readonly #camera = new PerspectiveCamera(FIELD_OF_VIEW, 1, 0.05, 60);
  readonly #controls: OrbitControls;
  readonly #parts = new Group();
  readonly #sun = new DirectionalLight(0xffffff, 2.4);
  readonly #size: ResizeObserver;
  #box = new Box3(new Vector3(-0.3, -0.3, 0), new Vector3(1.3, 0.3, 1));
  #marked: ReadonlySet<string> = new Set();
  #hidden: ReadonlySet<string> = new Set();
  #frame = 0;

  constructor(canvas: HTMLCanvasElement) {
    this.#renderer = new WebGLRenderer({ canvas, antialias: true, alpha: true });
    this.#renderer.toneMapping = NeutralToneMapping;
    this.#renderer.shadowMap.enabled = true;
    this.#renderer.shadowMap.type = PCFShadowMap;
    this.#camera.up.set(0, 0, 1);
    this.#controls = new OrbitControls(this.#camera, canvas);
    this.#controls.enableDamping = false;
    this.#controls.addEventListener('change', () => this.#draw());
    this.#light();
    this.#scene.add(this.#parts);
    this.look('corner');
    this.#size = new ResizeObserver(() => this.#fit(canvas));
    this.#size.observe(canvas.parentElement ?? canvas);
    this.#fit(canvas);
  }

  /** Shows these parts instead of those before; the point of view stays, unless other kinds are hidden. */
  show(parts: readonly DrawnPart[], hidden: ReadonlySet<string>): void {
    const isFirst = this.#parts.children.length === 0;
    const isOther = hidden.size !== this.#hidden.size;
    this.#hidden = hidden;
    this.#clear();
    for (const part of parts) if (!hidden.has(part.look)) this.#parts.add(solidOf(part));
    const box = new Box3().setFromObject(this.#parts);
    if (!box.isEmpty()) this.#box = box;
    this.mark(this.#marked);
    if (isFirst) this.look('corner');
    else if (isOther) this.#lookAlong(this.#camera.position.clone().sub(this.#controls.target));
    this.#draw();
  }

  /** Marks the solids of these parts. */
  mark(parts: ReadonlySet<string>): void {
    this.#marked = parts;
    for (const solid of this.#parts.children as Mesh[])
      markSolid(solid, parts.has(solid.userData.part as string));
    this.#draw();
  }

  look(from: Standpoint): void {
    this.#lookAlong(STANDPOINTS[from]);
  }

  /** Goes round the bike: `across` to the right, `up` over it [rad]. */
  turn(across: number, up: number): void {
    const away = this.#camera.position.clone().sub(this.#controls.target);
    // Spherical counts from the y axis; here up is z.
    const place = new Spherical().setFromVector3(new Vector3(away.y, away.z, away.x));
    place.theta += across;
    place.phi = Math.min(Math.max(place.phi - up, NEAREST_TO_POLE), Math.PI - NEAREST_TO_POLE);
    const next = new Vector3().setFromSpherical(place);
    this.#camera.position.set(next.z, next.x, next.y).add(this.#controls.target);
    this.#controls.update();
    this.#draw();
  }

  /** Above 1 goes nearer. */
  zoom(factor: number): void {
    const away = this.#camera.position.clone().sub(this.#controls.target);
    this.#camera.position.copy(away.divideScalar(factor)).add(this.#controls.target);
    this.#controls.update();
    this.#draw();
  }

  /** Part at a place of the canvas, counted from its middle: −1 to 1 to the right and up. */
  partAt(x: number, y: number): string | undefined {
    const ray = new Raycaster();
    ray.setFromCamera(new Vector2(x, y), this.#camera);
    const hits = ray.intersectObjects(this.#parts.children, false);
    return hits.map(({ object }) => object.userData).find(({ isClear }) => !isClear)?.part as
      | string
      | undefined;
  }

  dispose(): void {
    cancelAnimationFrame(this.#frame);
    this.#size.disconnect();
    this.#controls.dispose();
    this.#clear();
    this.#renderer.dispose();
  }

  /** All of the bike, seen from this side, as near as the picture holds it. */
  #lookAlong(from: Vector3): void {
    this.#controls.target.copy(this.#box.getCenter(new Vector3()));
    this.#camera.position.copy(from).setLength(1).add(this.#controls.target);
    this.#camera.lookAt(this.#controls.target);
    this.#camera.updateMatrixWorld();
    this.#camera.position.sub(this.#controls.target).setLength(this.#distanceFor(this.#camera.matrixWorld));
    this.#camera.position.add(this.#controls.target);
    this.#controls.update();
    this.#draw();
  }

  /** How far away from its middle all corners of the box are within the picture. */
  #distanceFor(seenFrom: Matrix4): number {
    const [right, up, back] = [new Vector3(), new Vector3(), new Vector3()];
    seenFrom.extractBasis(right, up, back);
    const tall = Math.tan(((FIELD_OF_VIEW / 2) * Math.PI) / 180) * FILLED;
    const half = this.#box.getSize(new Vector3()).divideScalar(2);
    const corners = [-1, 1].flatMap((x) => [-1, 1].flatMap((y) => [-1, 1].map((z) => new Vector3(x, y, z))));
    return Math.max(
      ...corners.map((corner) => {
        corner.multiply(half);
        const across = Math.abs(corner.dot(right)) / (tall * this.#camera.aspect);
        return corner.dot(back) + Math.max(across, Math.abs(corner.dot(up)) / tall);
      }),
    );
  }

  #light(): void {
    const sky = new HemisphereLight(0xffffff, 0xb9b0a2, 2.1);
    sky.position.set(0, 0, 1);
    this.#sun.position.set(1.6, 2.2, 3.4);
    this.#sun.castShadow = true;
    this.#sun.shadow.mapSize.set(1024, 1024);
    this.#sun.shadow.radius = 6;
    this.#sun.shadow.bias = -0.0006;
    Object.assign(this.#sun.shadow.camera, {
      left: -1.6,
      right: 1.6,
      top: 1.6,
      bottom: -1.6,
      near: 0.5,
      far: 8,
    });
    const ground = new Mesh(new PlaneGeometry(8, 8), new ShadowMaterial({ opacity: 0.22 }));
    ground.receiveShadow = true;
    this.#sun.target.position.set(0.5, 0, 0.3);
    this.#scene.add(sky, this.#sun, this.#sun.target, ground);
  }

  #fit(canvas: HTMLCanvasElement): void {
    const { clientWidth, clientHeight } = canvas.parentElement ?? canvas;
    if (clientWidth === 0 || clientHeight === 0) return;
    this.#renderer.setPixelRatio(Math.min(window.devicePixelRatio, 2));
    this.#renderer.setSize(clientWidth, clientHeight, false);
    const before = Math.max(1, 1 / this.#camera.aspect);
    this.#camera.aspect = clientWidth / clientHeight;
    this.#camera.updateProjectionMatrix();
    this.zoom(before / Math.max(1, 1 / this.#camera.aspect));
  }

  #draw(): void {
    if (this.#frame !== 0) return;
    this.#frame = requestAnimationFrame(() => {
      this.#frame = 0;
      this.#renderer.render(this.#scene, this.#camera);
    });
  }

  #clear(): void {
    for (const solid of [...this.#parts.children]) {
      disposeSolid(solid);
      this.#parts.remove(solid);
    }
  }
}
