/** Solids on a canvas: turned, opened, pulled apart piece by piece. */
import {
  Box3,
  BufferGeometry,
  Color,
  EdgesGeometry,
  Float32BufferAttribute,
  Group,
  LineBasicMaterial,
  LineSegments,
  Mesh,
  MeshBasicMaterial,
  type Object3D,
  Plane,
  PerspectiveCamera,
  Raycaster,
  Scene,
  Vector2,
  Vector3,
  WebGLRenderer,
} from "three";
import { OrbitControls } from "three/addons/controls/OrbitControls.js";
import { GLTFLoader } from "three/addons/loaders/GLTFLoader.js";

/** A piece as it can be pointed at. */
export interface PartSeen {
  path: string;
  title: string;
  mark: string;
  case: string;
}

export interface SolidView {
  parts: readonly PartSeen[];
  /** Open all fronts: 0 closed, 1 open. */
  open: (how: number) => void;
  hideFronts: (hidden: boolean) => void;
  /** Whether walls and a floor stand behind the pieces. */
  hasShell: boolean;
  hideShell: (hidden: boolean) => void;
  /** Pull the first so many pieces out, the others stay. */
  pull: (number: number) => void;
  mark: (path: string) => void;
  end: () => void;
}

interface Handlers {
  over: (part: PartSeen | null) => void;
  chosen: (part: PartSeen) => void;
}

interface Says extends PartSeen {
  front?: string;
  apart?: [number, number, number];
  opens?: { x: number; z: number; deg: number };
  slides?: number;
}

/** A piece: its node, the node that moves it, and what it says of itself. */
interface Piece {
  says: Says;
  mover: Group;
  turner: Group;
  face: Mesh<BufferGeometry, MeshBasicMaterial>;
  holes: LineSegments;
}

const INK = new Color("#1d1d1b");
const PAPER = new Color("#fffdf8");
const FRONT = new Color("#efe7d4");
const WALL = new Color("#f1f0ea");
const FLOOR = new Color("#e6e2d6");
const APPLIANCE = new Color("#dcdad3");
const SOFT = new Color("#a8a397");
const TOUCHED = new Color("#f2c879");
const CREASE_DEG = 25;
const SHORT = 8; // an edge of a hole at most [mm], as the file gives them
const NEAR = 3; // metres from which holes are drawn: from farther off they would be dots
const AROUND = 1.04; // of the way to the room, so that there is paper round it
const ROOM_TO_OPEN = 1.3; // of the way to a case by itself, whose doors open and pieces come out

/** Show a glTF file of solids in an element. */
export async function showSolids(into: HTMLElement, from: string, handlers: Handlers): Promise<SolidView> {
  const loaded = await new GLTFLoader().loadAsync(from);
  const renderer = new WebGLRenderer({ antialias: true, alpha: true });
  renderer.setPixelRatio(Math.min(devicePixelRatio, 2));
  const scene = new Scene();
  scene.add(loaded.scene);
  loaded.scene.updateMatrixWorld(true);
  const shell = shellOf(loaded.scene);
  const pieces = prepared(loaded.scene);
  const aspect = into.clientWidth / Math.max(into.clientHeight, 1) || 1;
  const camera = new PerspectiveCamera(35, aspect, 0.05, 200);
  const controls = new OrbitControls(camera, renderer.domElement);
  controls.listenToKeyEvents(into);
  controls.keyPanSpeed = 20;
  loaded.scene.updateMatrixWorld(true);
  stand(camera, controls, pieces.map((piece) => piece.face), shell.length > 0 ? AROUND : ROOM_TO_OPEN);

  let asked = false;
  const draw = () => {
    if (asked) return;
    asked = true;
    requestAnimationFrame(() => {
      asked = false;
      const close = camera.position.distanceTo(controls.target) < NEAR;
      for (const { holes } of pieces) holes.visible = close;
      // A wall is seen through from behind: so are its edges.
      for (const { edges, plane } of shell) edges.visible = plane === null || plane.distanceToPoint(camera.position) > 0;
      renderer.render(scene, camera);
    });
  };
  const fit = () => {
    const { clientWidth: wide, clientHeight: tall } = into;
    renderer.setSize(wide, tall);
    camera.aspect = wide / Math.max(tall, 1);
    camera.updateProjectionMatrix();
    draw();
  };
  const watcher = new ResizeObserver(fit);
  into.replaceChildren(renderer.domElement);
  watcher.observe(into);
  controls.addEventListener("change", draw);

  let touched: Piece | null = null;
  const touch = (piece: Piece | null) => {
    if (touched !== null) touched.face.material.color.copy(colour(touched));
    touched = piece;
    if (piece !== null) piece.face.material.color.copy(TOUCHED);
    handlers.over(piece === null ? null : piece.says);
    draw();
  };
  const under = pointing(renderer.domElement, camera, pieces);
  renderer.domElement.addEventListener("pointermove", (event) => touch(under(event)));
  let down = new Vector2();
  renderer.domElement.addEventListener("pointerdown", (event) => (down = new Vector2(event.clientX, event.clientY)));
  renderer.domElement.addEventListener("click", (event) => {
    const piece = under(event);
    if (piece !== null && down.distanceTo(new Vector2(event.clientX, event.clientY)) < 4) handlers.chosen(piece.says);
  });
  into.addEventListener("keydown", (event) => {
    const nearer = event.key === "+" || event.key === "=" ? 0.9 : event.key === "-" ? 1 / 0.9 : 0;
    const turn = { ArrowLeft: -0.12, ArrowRight: 0.12 }[event.key] ?? 0;
    const rise = { ArrowUp: -0.08, ArrowDown: 0.08 }[event.key] ?? 0;
    if (nearer === 0 && turn === 0 && rise === 0) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    move(camera, controls, nearer === 0 ? 1 : nearer, turn, rise);
    draw();
  }, true);

  return {
    parts: pieces.map((piece) => piece.says),
    open: (how) => {
      for (const piece of pieces) opened(piece, how);
      draw();
    },
    hideFronts: (hidden) => {
      for (const piece of pieces) piece.turner.visible = !(hidden && piece.says.front);
      draw();
    },
    hasShell: shell.some(({ plane }) => plane !== null),
    hideShell: (hidden) => {
      for (const { mesh, plane } of shell) if (plane !== null) mesh.visible = !hidden;
      draw();
    },
    pull: (number) => {
      pieces.forEach((piece, n) => pulled(piece, n < number ? 1 : 0));
      draw();
    },
    mark: (path) => touch(pieces.find((piece) => piece.says.path === path) ?? null),
    end: () => {
      watcher.disconnect();
      controls.dispose();
      renderer.dispose();
      renderer.domElement.remove();
    },
  };
}

/** Each part under a node that pulls it and one that opens it, with its edges in ink. */
function prepared(root: Object3D): Piece[] {
  const found: Mesh[] = [];
  root.traverse((each) => {
    if (each instanceof Mesh && each.userData["shell"] === undefined) found.push(each);
  });
  const edges = new Map<string, Edges>();
  const ink = new LineBasicMaterial({ color: INK });
  const pieces = found.map((mesh) => {
    const says = mesh.userData as Says;
    const face = mesh as Mesh<BufferGeometry, MeshBasicMaterial>;
    face.material = new MeshBasicMaterial({ color: PAPER, polygonOffset: true, polygonOffsetFactor: 0.5, polygonOffsetUnits: 1 });
    const known = edges.get(mesh.geometry.uuid) ?? edgesOf(mesh.geometry);
    edges.set(mesh.geometry.uuid, known);
    const mover = new Group();
    const turner = new Group();
    mesh.parent?.add(turner);
    turner.add(mover);
    mover.add(mesh);
    mesh.add(new LineSegments(known.outline, ink));
    const holes = new LineSegments(known.holes, ink);
    mesh.add(holes);
    const piece = { says, mover, turner, face, holes };
    face.material.color.copy(colour(piece));
    return piece;
  });
  return pieces.sort(byTurn);
}

interface Edges {
  outline: BufferGeometry;
  holes: BufferGeometry;
}

/** The edges of a piece, those of holes by themselves: they are short. */
function edgesOf(geometry: BufferGeometry): Edges {
  const all = new EdgesGeometry(geometry, CREASE_DEG).getAttribute("position").array;
  const lots: [number[], number[]] = [[], []];
  for (let n = 0; n < all.length; n += 6) {
    const ends = [...all.slice(n, n + 6)];
    const [x = 0, y = 0, z = 0, u = 0, v = 0, w = 0] = ends;
    lots[Math.hypot(u - x, v - y, w - z) < SHORT ? 1 : 0].push(...ends);
  }
  const [outline, holes] = lots.map((points) => new BufferGeometry().setAttribute("position", new Float32BufferAttribute(points, 3)));
  return { outline: outline as BufferGeometry, holes: holes as BufferGeometry };
}

/** A wall, the floor or an appliance, with its edges. */
interface ShellPiece {
  mesh: Mesh;
  edges: LineSegments;
  /** Of a wall: the plane that it is seen from the front of. */
  plane: Plane | null;
}

/** Walls and floor, seen from within only, and appliances; never touched. */
function shellOf(root: Object3D): ShellPiece[] {
  const found: Mesh[] = [];
  root.traverse((each) => {
    if (each instanceof Mesh && each.userData["shell"] !== undefined) found.push(each);
  });
  const ink = new LineBasicMaterial({ color: SOFT });
  return found.map((mesh) => {
    const kind = mesh.userData["shell"] as string;
    const color = kind === "floor" ? FLOOR : kind === "appliance" ? APPLIANCE : WALL;
    mesh.material = new MeshBasicMaterial({ color, polygonOffset: true, polygonOffsetFactor: 2, polygonOffsetUnits: 2 });
    const edges = new LineSegments(new EdgesGeometry(mesh.geometry, CREASE_DEG), ink);
    mesh.add(edges);
    return { mesh, edges, plane: kind === "appliance" ? null : planeOf(mesh) };
  });
}

/** The plane that a flat mesh lies in, facing the way it is seen from. */
function planeOf(mesh: Mesh): Plane {
  const at = mesh.geometry.getAttribute("position");
  const index = mesh.geometry.getIndex();
  const corner = (n: number) => new Vector3().fromBufferAttribute(at, index === null ? n : index.getX(n));
  return new Plane().setFromCoplanarPoints(corner(0), corner(1), corner(2)).applyMatrix4(mesh.matrixWorld);
}

/** In the order in which they are pulled out: fronts first, then what lies furthest out. */
function byTurn(one: Piece, other: Piece): number {
  const rank = (piece: Piece) => (piece.says.front ? 0 : 1);
  const out = (piece: Piece) => -(piece.says.apart?.[2] ?? 0);
  return rank(one) - rank(other) || one.says.case.localeCompare(other.says.case) || out(one) - out(other) || one.says.path.localeCompare(other.says.path);
}

function colour(piece: Piece): Color {
  return piece.says.front ? FRONT : PAPER;
}

function pulled(piece: Piece, how: number): void {
  const [x, y, z] = piece.says.apart ?? [0, 0, 0];
  piece.mover.position.set(x * how, y * how, z * how);
}

function opened(piece: Piece, how: number): void {
  const { opens, slides } = piece.says;
  if (opens !== undefined) {
    const angle = (opens.deg * Math.PI * how) / 180;
    const hinge = new Vector3(opens.x, 0, opens.z);
    const turned = hinge.clone().applyAxisAngle(new Vector3(0, 1, 0), angle);
    piece.turner.rotation.set(0, angle, 0);
    piece.turner.position.copy(hinge.sub(turned));
  } else if (slides !== undefined) {
    piece.turner.position.set(0, 0, slides * how);
  }
}

/** Before the room and a little above it, as near as all of it is seen. */
function stand(camera: PerspectiveCamera, controls: OrbitControls, what: readonly Object3D[], around: number): void {
  const boxes = what.map((each) => new Box3().setFromObject(each));
  const middle = boxes.reduce((all, box) => all.union(box), new Box3()).getCenter(new Vector3());
  const back = new Vector3(-0.35, 0.35, 0.87).normalize();
  const right = new Vector3(0, 1, 0).cross(back).normalize();
  const up = back.clone().cross(right);
  const spots = boxes.flatMap((box) => cornersOf(box).map((spot) => spot.sub(middle)));
  const tall = Math.tan((camera.fov * Math.PI) / 360);
  const wide = fitted(spots, right, back, tall * camera.aspect);
  const high = fitted(spots, up, back, tall);
  controls.target.copy(middle).addScaledVector(right, wide.aside).addScaledVector(up, high.aside);
  camera.position.copy(controls.target).addScaledVector(back, Math.max(wide.away, high.away) * around);
  controls.update();
}

/** How far aside and away one stands so that spots just fill the field across one direction. */
function fitted(spots: readonly Vector3[], across: Vector3, back: Vector3, slope: number): { aside: number; away: number } {
  const reach = (sign: number) => Math.max(...spots.map((spot) => sign * spot.dot(across) + slope * spot.dot(back)));
  const [more, less] = [reach(1), reach(-1)];
  return { aside: (more - less) / 2, away: (more + less) / (2 * slope) };
}

function cornersOf({ min, max }: Box3): Vector3[] {
  return [min.x, max.x].flatMap((x) => [min.y, max.y].flatMap((y) => [min.z, max.z].map((z) => new Vector3(x, y, z))));
}

function move(camera: PerspectiveCamera, controls: OrbitControls, nearer: number, turn: number, rise: number): void {
  const from = camera.position.clone().sub(controls.target).multiplyScalar(nearer);
  from.applyAxisAngle(new Vector3(0, 1, 0), turn);
  const side = new Vector3(0, 1, 0).cross(from).normalize();
  from.applyAxisAngle(side, rise);
  camera.position.copy(controls.target).add(from);
  controls.update();
}

function pointing(canvas: HTMLCanvasElement, camera: PerspectiveCamera, pieces: readonly Piece[]) {
  const ray = new Raycaster();
  const faces = new Map(pieces.map((piece) => [piece.face as Object3D, piece]));
  return (event: MouseEvent): Piece | null => {
    const box = canvas.getBoundingClientRect();
    const at = new Vector2(((event.clientX - box.left) / box.width) * 2 - 1, 1 - ((event.clientY - box.top) / box.height) * 2);
    ray.setFromCamera(at, camera);
    const shown = pieces.filter((piece) => piece.turner.visible).map((piece) => piece.face);
    const [hit] = ray.intersectObjects(shown, false);
    return hit === undefined ? null : (faces.get(hit.object) ?? null);
  };
}
