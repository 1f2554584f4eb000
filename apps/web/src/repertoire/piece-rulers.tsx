import type { FigureFacts } from '@twistwright/planner';
import { type AirOptions, isTube, type Piece, type PieceAir, shippedSizes, sizeOf, unfold } from '@twistwright/repertoire';
import { showLength } from '@twistwright/units';
import { type ReactElement, useMemo } from 'react';
import { Measured } from '../parts/measured.tsx';
import { strokesInWords } from './repertoire-words.ts';

interface PieceRulersProps {
  readonly pieces: readonly PieceAir[];
  readonly facts: FigureFacts;
  readonly ruler: 'in' | 'cm';
  /** Sizes, and what was measured of the balloons. */
  readonly options: AirOptions;
}

/** Every balloon of a figure on its two rulers. */
export function PieceRulers({ pieces, facts, ruler, options }: PieceRulersProps): ReactElement {
  const labels = useMemo(() => {
    const { bubbles } = unfold(facts.recipe);
    return facts.recipe.pieces.map((_, index) =>
      bubbles
        .filter((bubble) => bubble.piece === index && bubble.copy === 0)
        .map(({ label, kind }) => ({ label, isFlat: kind === 'flat' })),
    );
  }, [facts]);
  return (
    <div className="pieces">
      {pieces.map((piece) => (
        <PieceRuler
          key={piece.piece}
          piece={piece}
          bubbles={labels[piece.piece] ?? []}
          ruler={ruler}
          stretch={stretchOf(facts.recipe.pieces[piece.piece], options)}
        />
      ))}
    </div>
  );
}

/** Inflated inches out of a flat one; undefined for what is no tube. */
function stretchOf(piece: Piece | undefined, { sizes = shippedSizes, workingOf }: AirOptions): number | undefined {
  const size = piece === undefined ? undefined : sizeOf(piece.size, sizes);
  if (piece === undefined || size === undefined || !isTube(size)) return undefined;
  return workingOf?.(size, piece)?.stretch.mean ?? size.stretch;
}

interface PieceRulerProps {
  readonly piece: PieceAir;
  readonly bubbles: readonly { readonly label: string | undefined; readonly isFlat: boolean }[];
  readonly ruler: 'in' | 'cm';
}

function PieceRuler({ piece, bubbles, ruler, stretch }: PieceRulerProps & { readonly stretch: number | undefined }): ReactElement {
  const show = (inches: number): string => showLength(inches, ruler);
  const tube = stretch !== undefined;
  const left = piece.leftFlatInches;
  return (
    <div className="piece">
      <h3>
        {piece.count > 1 ? `${piece.count} × ` : ''}
        {piece.size}, {piece.name}
      </h3>
      <p>
        {tube
          ? `Blow up to ${show(piece.inflatedInches)}, leave ${show(piece.tailInches)} flat${piece.strokes === undefined ? '' : `, ${strokesInWords(piece.strokes)}`}. About ${show(Math.max(0, left.mid))} flat is left at the tip `
          : `Blow up to ${show(piece.inflatedInches)} across${piece.strokes === undefined ? '' : `, ${strokesInWords(piece.strokes)}`}.`}
        {tube && (
          <span className="sp">
            ({show(Math.max(0, left.low))} to {show(Math.max(0, left.high))})
          </span>
        )}
        {tube && '.'} {piece.verdict === 'fits' ? 'Fits.' : <span className="tight">{piece.verdict}</span>}
      </p>
      {tube && (
        <Measured className="rulers">
          {(width) => (
            <Rulers
              piece={piece}
              bubbles={bubbles}
              width={width}
              flatInches={piece.tailInches + piece.inflatedInches / stretch}
              ruler={ruler}
            />
          )}
        </Measured>
      )}
      {piece.cautions.map((caution) => (
        <p className="note" key={caution}>
          {caution}
        </p>
      ))}
      {piece.changes.map((change) => (
        <p className="note" key={change.sentence}>
          {change.sentence}
        </p>
      ))}
    </div>
  );
}

interface RulersProps extends PieceRulerProps {
  readonly width: number;
  readonly flatInches: number;
}
function Rulers({ piece, bubbles, width, flatInches, ruler }: RulersProps): ReactElement {
  const inner = width - 16;
  const perFlat = inner / flatInches;
  const made = piece.inches.map((inches, index) => ({
    inches: bubbles[index]?.isFlat === true ? 0 : inches,
    label: bubbles[index]?.label,
  }));
  const total = Math.max(
    piece.inflatedInches,
    made.reduce((sum, { inches }) => sum + inches, 0),
  );
  const perInch = inner / total;
  const filled = (flatInches - piece.tailInches) * perFlat;
  let x = 8;
  const bars = made.map(({ inches, label }) => {
    const bar = { x, width: inches * perInch, label };
    x += bar.width;
    return bar;
  });
  const says = `Flat: ${showLength(flatInches - piece.tailInches, ruler)} to fill and ${showLength(piece.tailInches, ruler)} to leave. Inflated: ${piece.bubbles} bubbles in ${showLength(piece.inflatedInches, ruler)}.`;
  return (
    <svg width={width} height={112} viewBox={`0 0 ${width} 112`} role="img" aria-label={says}>
      <rect x={8} y={6} width={filled} height={10} rx={5} fill="var(--ink)" />
      <path d={`M${8 + filled} 11H${8 + inner}`} stroke="var(--rule-strong)" strokeWidth={5} strokeLinecap="round" />
      <Scale y={22} inches={flatInches} per={perFlat} ruler={ruler} of="flat" />
      {bars.map((bar, index) =>
        bar.width <= 0 ? null : (
          // biome-ignore lint/suspicious/noArrayIndexKey: bubbles have no name of their own, only their place in the row
          <g key={index}>
            <rect
              x={bar.x + 0.6}
              y={62}
              width={Math.max(1.5, bar.width - 1.2)}
              height={16}
              rx={Math.min(8, bar.width / 2)}
              fill="var(--sheet)"
              stroke="var(--ink)"
              strokeWidth={1.6}
            />
            {bar.label !== undefined && bar.label.length * 7.2 < bar.width - 10 && (
              <text x={bar.x + bar.width / 2} y={75} textAnchor="middle" fontSize={15} fill="var(--ink)">
                {bar.label}
              </text>
            )}
          </g>
        ),
      )}
      <Scale y={84} inches={total} per={perInch} ruler={ruler} of="inflated" />
    </svg>
  );
}

interface ScaleProps {
  readonly y: number;
  readonly inches: number;
  readonly per: number;
  readonly ruler: 'in' | 'cm';
  readonly of: string;
}
/** One ink line, ticks outward, few labels; the first carries the unit. */
function Scale({ y, inches, per, ruler, of }: ScaleProps): ReactElement {
  const unit = ruler === 'cm' ? per / 2.54 : per;
  const length = ruler === 'cm' ? inches * 2.54 : inches;
  const step = [1, 2, 5, 10, 20, 50].find((candidate) => candidate * unit >= 44) ?? 100;
  const ticks = Array.from({ length: Math.floor(length / step) + 1 }, (_, index) => index * step);
  return (
    <g>
      <path d={`M8 ${y}H${8 + inches * per}`} stroke="var(--ink)" strokeWidth={2} />
      {ticks.map((tick) => (
        <g key={tick}>
          <path d={`M${8 + tick * unit} ${y}v7`} stroke="var(--ink)" strokeWidth={1.5} />
          <text x={8 + tick * unit} y={y + 22} fontSize={15} fill="var(--ink-2)" textAnchor={tick === 0 ? 'start' : 'middle'}>
            {tick === 0 ? `0 ${ruler} ${of}` : tick * unit < 92 ? '' : tick}
          </text>
        </g>
      ))}
    </g>
  );
}
