import { Canvas, useFrame, useThree } from '@react-three/fiber';
import type { Book } from '@twistwright/books';
import { paintsOf } from '@twistwright/planner';
import { bestView, rubberOf as rubberOfPaint, type Shape } from '@twistwright/repertoire';
import {
  Component,
  type PointerEvent,
  type ReactElement,
  type ReactNode,
  useEffect,
  useLayoutEffect,
  useMemo,
  useRef,
  useState,
} from 'react';
import { type BufferGeometry, Color, type Group } from 'three';
import { bodiesOf } from './bodies-of.ts';
import type { FigureBody } from './drawing-ask.ts';

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

/** Radians about the upright, and about the level line of the picture. */
interface Turn {
  readonly about: number;
  readonly over: number;
}
const startOf: Readonly<Record<ReturnType<typeof bestView>, Turn>> = {
  side: { about: 1.45, over: 0.1 },
  quarter: { about: 1.1, over: 0.16 },
  front: { about: 0.12, over: 0.08 },
  turned: { about: 0.45, over: 0.25 },
  top: { about: 0.95, over: 0.5 },
};
const eighthTurn = Math.PI / 4;
const steepest = 1.4;
/** Degrees from the top of the picture to its bottom. */
const fieldOfView = 24;

/** The figure as a body: a finger turns it, or two buttons. Nothing is drawn while nothing moves. */
export function TurnedFigure({ body, before, book, fill, upToMove, says, onFailure }: TurnedFigureProps): ReactElement {
  // How far it was turned from where it is shown first.
  const [turn, setTurn] = useState<Turn>({ about: 0, over: 0 });
  const [isSeen, setSeen] = useState(false);
  const drag = useRef<{ readonly x: number; readonly y: number; readonly from: Turn }>(undefined);
  const paints = useMemo(() => paintsOf(book, fill), [book, fill]);
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
    <OnFailure told={onFailure}>
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
        <Canvas
          frameloop="demand"
          dpr={[1, 2]}
          flat
          gl={{ antialias: true, alpha: true, powerPreference: 'low-power' }}
          camera={{ fov: fieldOfView, near: 1, far: 400 }}
        >
          <hemisphereLight args={['#ffffff', '#8a8d92', 1.5]} />
          <directionalLight position={[-30, 50, 60]} intensity={1.8} />
          {/* From behind: black rubber keeps an edge on a dark page. */}
          <directionalLight position={[45, 25, -50]} intensity={1.6} />
          {body !== undefined && <Figure body={body} paints={paints} turn={turn} upToMove={upToMove} onSeen={() => setSeen(true)} />}
        </Canvas>
      </div>
      <div className="row turnrow">
        <button type="button" className="btn" onClick={() => by(eighthTurn)}>
          Turn left
        </button>
        <button type="button" className="btn" onClick={() => by(-eighthTurn)}>
          Turn right
        </button>
      </div>
    </OnFailure>
  );
}

interface FigureProps {
  readonly body: FigureBody;
  readonly paints: Readonly<Record<string, string>>;
  readonly turn: Turn;
  readonly upToMove: number | undefined;
  readonly onSeen: () => void;
}

function Figure({ body, paints, turn, upToMove, onSeen }: FigureProps): ReactElement {
  const group = useRef<Group>(null);
  const invalidate = useThree((state) => state.invalidate);
  const camera = useThree((state) => state.camera);
  const start = useMemo(() => startOf[bestView(body.shape)], [body]);
  const { middle, distance } = useMemo(() => frameOf(body.shape), [body]);
  const bodies = useMemo(() => bodiesOf(body, upToMove), [body, upToMove]);
  useEffect(
    () => () => {
      for (const { geometry } of bodies) geometry.dispose();
    },
    [bodies],
  );
  useLayoutEffect(() => {
    camera.position.set(0, middle, distance);
    camera.lookAt(0, middle, 0);
    const over = Math.max(-steepest, Math.min(steepest, start.over + turn.over));
    group.current?.rotation.set(over, -(start.about + turn.about) - Math.PI / 2, 0, 'XYZ');
    invalidate();
  }, [camera, middle, distance, start, turn, invalidate]);
  useFirstFrame(onSeen);
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is drawn has changed
  useLayoutEffect(() => invalidate(), [bodies, paints, invalidate]);
  return (
    <group position={[0, middle, 0]}>
      <group ref={group}>
        <group position={[0, -middle, 0]}>
          {bodies.map(({ key, role, ink, isGhost, geometry }) => (
            <Rubber key={key} geometry={geometry} paint={ink ?? paints[role ?? ''] ?? 'grey'} isGhost={isGhost === true} />
          ))}
        </group>
      </group>
    </group>
  );
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

interface RubberProps {
  readonly geometry: BufferGeometry;
  readonly paint: string;
  readonly isGhost: boolean;
}

/** Glossy latex: a deep body colour, a small bright streak of light. What is still to be made is a shadow of it. */
function Rubber({ geometry, paint, isGhost }: RubberProps): ReactElement {
  const { body } = rubberOfPaint(paint) ?? { body: '#9da3a9' };
  const colour = useMemo(() => new Color(body), [body]);
  return (
    <mesh geometry={geometry} renderOrder={isGhost ? 1 : 0}>
      {isGhost ? (
        <meshBasicMaterial color="#787d82" transparent opacity={0.13} depthWrite={false} />
      ) : (
        <meshPhongMaterial color={colour} specular="#9a9a9a" shininess={90} />
      )}
    </mesh>
  );
}

/** How far away to stand so that the whole figure is seen however it is turned. */
function frameOf(shape: Shape): { readonly middle: number; readonly distance: number } {
  let [low, high, wide] = [0, 1, 1];
  for (const { line, radius } of shape.bubbles)
    for (const [x, y, z] of line) {
      low = Math.min(low, y - radius);
      high = Math.max(high, y + radius);
      wide = Math.max(wide, Math.sqrt(x * x + z * z) + radius);
    }
  const reach = Math.sqrt(((high - low) / 2) ** 2 + wide ** 2 * 0.8);
  return { middle: (low + high) / 2, distance: (Math.max(reach, 1) / Math.tan((fieldOfView * Math.PI) / 360)) * 1.06 };
}

/** When drawing fails, for want of a graphics context, the page says so and shows the flat picture. */
class OnFailure extends Component<{ readonly told: () => void; readonly children: ReactNode }, { readonly failed: boolean }> {
  override readonly state = { failed: false };
  static getDerivedStateFromError(): { readonly failed: boolean } {
    return { failed: true };
  }
  override componentDidCatch(): void {
    this.props.told();
  }
  override render(): ReactNode {
    return this.state.failed ? null : this.props.children;
  }
}
