import { createRoot, extend, useFrame, useThree } from '@react-three/fiber';
import type { Book } from '@twistwright/books';
import { paintsOf } from '@twistwright/planner';
import { type PointerEvent, type ReactElement, type ReactNode, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import {
  BufferAttribute,
  BufferGeometry,
  Group,
  Matrix4,
  Mesh,
  OrthographicCamera,
  type RawShaderMaterial,
  setConsoleFunction,
} from 'three';
import type { Body, FigureBody } from './bodies-of.ts';
import { floorShadow, ghost, inkOn, latex, rubberNamed } from './latex.ts';
import { takeStage } from './stage.ts';
import type { Surface } from './surface.ts';
import { type Turn, type Window, windowOf } from './turned-view.ts';
import { useDark } from './use-drawing.ts';

export { makeReady } from './stage.ts';

extend({ Group, Mesh });

// The clock that react-three-fiber makes for every scene is deprecated in three.js; nothing here asks it for the time.
setConsoleFunction((kind, message, ...more) => {
  if (!message.startsWith('THREE.Clock:')) console[kind](message, ...more);
});

export interface TurnedFigureProps {
  /** Missing while it is worked out. */
  readonly body: FigureBody | undefined;
  /** Stands there until the body is seen. */
  readonly before: ReactElement;
  readonly book: Book;
  /** Colour of every role. */
  readonly fill: Readonly<Record<string, string>>;
  readonly upToMove: number | undefined;
  readonly says: string;
  /** The picture cannot be drawn after all. */
  readonly onFailure: () => void;
}

const eighthTurn = Math.PI / 4;
const steepest = 1.4;

/** The figure as a body: a finger turns it, or two buttons. Nothing is drawn while nothing moves. */
export function TurnedFigure({ body, before, book, fill, upToMove, says, onFailure }: TurnedFigureProps): ReactElement {
  // How far it was turned from where its flat picture shows it.
  const [turn, setTurn] = useState<Turn>({ about: 0, over: 0 });
  const [isSeen, setSeen] = useState(false);
  const drag = useRef<{ readonly x: number; readonly y: number; readonly from: Turn }>(undefined);
  const paints = useMemo(() => paintsOf(book, fill), [book, fill]);
  const isDark = useDark();
  const down = (event: PointerEvent): void => {
    event.currentTarget.setPointerCapture(event.pointerId);
    drag.current = { x: event.clientX, y: event.clientY, from: turn };
  };
  const move = (event: PointerEvent): void => {
    const start = drag.current;
    if (start === undefined) return;
    const over = start.from.over + (event.clientY - start.y) * 0.008;
    setTurn({ about: start.from.about - (event.clientX - start.x) * 0.01, over: Math.max(-steepest, Math.min(steepest, over)) });
  };
  const up = (): void => {
    drag.current = undefined;
  };
  const by = (angle: number): void => setTurn({ ...turn, about: turn.about + angle });
  return (
    <>
      <div
        className="turn"
        role="img"
        aria-label={`${says}, as a body that can be turned`}
        onPointerDown={down}
        onPointerMove={move}
        onPointerUp={up}
        onPointerCancel={up}
      >
        {!isSeen && <div className="before">{before}</div>}
        <Scene onFailure={onFailure}>
          {body !== undefined && (
            <Figure body={body} paints={paints} isDark={isDark} turn={turn} upToMove={upToMove} onSeen={() => setSeen(true)} />
          )}
        </Scene>
      </div>
      <div className="row turnrow">
        <button type="button" className="btn" onClick={() => by(eighthTurn)}>
          Turn left
        </button>
        <button type="button" className="btn" onClick={() => by(-eighthTurn)}>
          Turn right
        </button>
      </div>
    </>
  );
}

/** A figure that has not moved for so long rests, milliseconds. */
const restAfter = 350;

interface SceneProps {
  readonly onFailure: () => void;
  readonly children: ReactNode;
}

/**
 * A canvas with a scene in it, as large as what it stands in. It is made by hand and not by the library's own element, which brings all of
 * three.js with it: a page that waits for its first picture feels every part that it does not need.
 */
function Scene({ onFailure, children }: SceneProps): ReactElement {
  const host = useRef<HTMLDivElement>(null);
  const drawing = useRef<(what: ReactNode) => void>(undefined);
  const failed = useRef(onFailure);
  failed.current = onFailure;
  useLayoutEffect(() => {
    const place = host.current as HTMLDivElement;
    const stage = takeStage();
    if (stage === undefined) {
      failed.current();
      return undefined;
    }
    const { canvas, renderer, isSlow } = stage;
    const lost = (): void => failed.current();
    canvas.addEventListener('webglcontextlost', lost);
    const camera = Object.assign(new OrthographicCamera(), { manual: true });
    place.append(canvas);
    const made = createRoot(canvas);
    const fine = Math.min(Math.max(2, devicePixelRatio), 2 * devicePixelRatio);
    const fit = (dpr: number): void => {
      const { width, height } = place.getBoundingClientRect();
      const size = { width, height, top: 0, left: 0 };
      void made.configure({ gl: () => renderer, camera, size, dpr, frameloop: 'demand', flat: true, linear: true });
    };
    // Counted from when the coarse picture is seen, so that the fine one never keeps it waiting.
    let frame = 0;
    let rest: ReturnType<typeof setTimeout> | undefined;
    const stayCoarse = (): void => {
      cancelAnimationFrame(frame);
      clearTimeout(rest);
    };
    const fitAgain = (): void => {
      stayCoarse();
      fit(isSlow ? 1 : fine);
      if (!isSlow) return;
      frame = requestAnimationFrame(() => {
        frame = requestAnimationFrame(() => {
          rest = setTimeout(() => fit(fine), restAfter);
        });
      });
    };
    drawing.current = (what) => {
      fitAgain();
      made.render(what);
    };
    const watched = new ResizeObserver(fitAgain);
    watched.observe(place);
    return () => {
      stayCoarse();
      watched.disconnect();
      canvas.removeEventListener('webglcontextlost', lost);
      drawing.current = undefined;
      made.unmount();
      canvas.remove();
    };
  }, []);
  useLayoutEffect(() => drawing.current?.(children), [children]);
  return <div className="scene" ref={host} />;
}

interface FigureProps {
  readonly body: FigureBody;
  readonly paints: Readonly<Record<string, string>>;
  readonly isDark: boolean;
  readonly turn: Turn;
  readonly upToMove: number | undefined;
  readonly onSeen: () => void;
}

function Figure({ body, paints, isDark, turn, upToMove = Number.POSITIVE_INFINITY, onSeen }: FigureProps): ReactElement {
  const { invalidate, camera, size } = useThree();
  const group = useRef<Group>(null);
  const parts = useMemo(() => body.bodies.map((one) => ({ body: one, ...geometriesOf(one.surface) })), [body]);
  const ghostly = useMemo(ghost, []);
  useEffect(
    () => () => {
      for (const { there, later } of parts) for (const geometry of [there, later]) geometry.dispose();
    },
    [parts],
  );
  useEffect(() => () => ghostly.dispose(), [ghostly]);
  useLayoutEffect(() => {
    const window = windowOf(body, turn, size);
    look(camera as OrthographicCamera, window);
    group.current?.matrix.copy(new Matrix4().set(...window.placed));
    group.current?.updateMatrixWorld(true);
    invalidate();
  });
  useFirstFrame(onSeen);
  return (
    <group ref={group} matrixAutoUpdate={false}>
      {parts.map(({ body: one, there, later }) => {
        const cut = cornersAfter(one.surface, upToMove);
        const all = one.surface.corners.length;
        return (
          <Part key={one.key} body={one} there={there} paints={paints} isDark={isDark} corners={cut}>
            {one.role !== undefined && one.ink === undefined && cut < all && (
              <mesh geometry={ranged(later, cut, all)} material={ghostly} renderOrder={3} />
            )}
          </Part>
        );
      })}
    </group>
  );
}

interface PartProps {
  readonly body: Body;
  readonly there: BufferGeometry;
  readonly paints: Readonly<Record<string, string>>;
  readonly isDark: boolean;
  readonly corners: number;
  readonly children: ReactNode;
}

/** What is there of a body, and behind it what is still to be made. */
function Part({ body, there, paints, isDark, corners, children }: PartProps): ReactElement {
  const paint = paints[body.role ?? ''];
  const { role, ink, finish } = body;
  const material = useMemo((): RawShaderMaterial => {
    if (role === undefined) return floorShadow(isDark);
    const rubber = rubberNamed(paint);
    return ink === undefined ? latex(rubber, finish, isDark) : inkOn(rubber, ink);
  }, [role, ink, finish, paint, isDark]);
  useEffect(() => () => material.dispose(), [material]);
  return (
    <>
      {corners > 0 && <mesh geometry={ranged(there, 0, corners)} material={material} renderOrder={orderOf(body)} />}
      {children}
    </>
  );
}

/** The shadow lies under everything; of what is see-through, what is drawn on the rubber comes before what is still to be made. */
const orderOf = ({ role, ink }: Body): number => (role === undefined ? 0 : ink === undefined ? 1 : 2);

/** One geometry for what is there and one for what is still to be made, with the same numbers. */
function geometriesOf({ places, normals, runs, light, corners }: Surface): {
  readonly there: BufferGeometry;
  readonly later: BufferGeometry;
} {
  const attributes = {
    position: new BufferAttribute(places, 3),
    normal: new BufferAttribute(normals, 3),
    run: new BufferAttribute(runs, 4),
    light: new BufferAttribute(light, 1),
  };
  const index = new BufferAttribute(corners, 1);
  const made = (): BufferGeometry => Object.assign(new BufferGeometry(), { attributes, index });
  return { there: made(), later: made() };
}

function ranged(geometry: BufferGeometry, from: number, to: number): BufferGeometry {
  geometry.setDrawRange(from, to - from);
  return geometry;
}

const cornersAfter = ({ stages }: Surface, deeds: number): number => stages.findLast((stage) => stage.deed <= deeds)?.corners ?? 0;

function look(camera: OrthographicCamera, { left, right, top, bottom, depth }: Window): void {
  Object.assign(camera, { left, right, top, bottom, near: 0, far: 2 * depth });
  camera.position.set(0, 0, depth);
  camera.rotation.set(0, 0, 0);
  camera.updateProjectionMatrix();
  camera.updateMatrixWorld(true);
}

/** Marks the moment at which the figure is first seen, for whoever measures. */
function useFirstFrame(onSeen: () => void): void {
  const seen = useRef(false);
  useFrame(() => {
    if (seen.current) return;
    seen.current = true;
    requestAnimationFrame(() => {
      performance.mark('figure turns');
      onSeen();
    });
  });
}
