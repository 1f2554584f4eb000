import type { ReactElement } from 'react';
import { Pinch } from '../pictures/pinch.tsx';
import { niceStep } from '../pictures/step-curve.tsx';
import type { CurvePoint } from './kit-ask.ts';

/** Half a finger of the slider: the ends of the axis stand where its middle can go. */
const finger = 17;
const top = 34;

export interface CurveRule {
  readonly label: string;
  readonly at: number;
  readonly met: number;
}
export interface BudgetCurveProps {
  readonly width: number;
  readonly min: number;
  readonly max: number;
  readonly points: readonly CurvePoint[];
  readonly chosen: CurvePoint | undefined;
  readonly rules: readonly CurveRule[];
  readonly showAt: (at: number) => string;
  readonly label: string;
}

/** Money against requests met: steps, because bags are whole; a grey band from 10th to 90th; squares for rules of thumb. Its axis is the slider below. */
export function BudgetCurve({ width, min, max, points, chosen, rules, showAt, label }: BudgetCurveProps): ReactElement {
  const narrow = width < 560;
  const height = narrow ? 262 : 320;
  const base = height - 44;
  const right = width - finger;
  const x = (at: number): number => finger + ((Math.min(Math.max(at, min), max) - min) / Math.max(1, max - min)) * (width - 2 * finger);
  const y = (share: number): number => base - share * (base - top);
  const last = points.at(-1);
  const steps = (of: (point: CurvePoint) => number): string =>
    points.map((point, i) => (i === 0 ? `M${x(point.budget)} ${y(of(point))}` : `H${x(point.budget)}V${y(of(point))}`)).join('');
  const back = [...points].reverse().map((point, i, all) => {
    const next = all[i - 1];
    return `${next === undefined ? '' : `L${x(next.budget)} ${y(point.low)}`}L${x(point.budget)} ${y(point.low)}`;
  });
  const tick = niceStep(max - min, narrow ? 4 : 6);
  const ticks = Array.from({ length: Math.floor(max / tick) + 1 }, (_, index) => index * tick).filter((at) => at >= min && at <= max);
  return (
    <svg viewBox={`0 0 ${width} ${height}`} width="100%" role="img" aria-label={label}>
      {points.length > 1 && last !== undefined && (
        <path
          d={`${steps((point) => point.high)}V${y(last.low)}${back.join('')}Z`}
          fill="color-mix(in srgb, var(--ink) 13%, var(--ground))"
        />
      )}
      {[0.25, 0.5, 0.75, 1].map((share) => (
        <g key={share}>
          <path d={`M${finger} ${y(share)}H${right}`} stroke="var(--rule-strong)" strokeDasharray="1 5" />
          <text className="ax" x={share === 1 ? finger : right} textAnchor={share === 1 ? 'start' : 'end'} y={y(share) - 6}>
            {share * 100}
            {share === 1 ? ' of 100 requests met' : ''}
          </text>
        </g>
      ))}
      <path d={steps((point) => point.met)} fill="none" stroke="var(--ink)" strokeWidth="2.5" />
      <Rules rules={rules} x={x} y={y} width={width} base={base} />
      {chosen !== undefined && (
        <g transform={`translate(${x(chosen.budget)} 0) rotate(90)`}>
          <Pinch low={y(chosen.high)} middle={y(chosen.met)} high={y(chosen.low)} y={0} height={22} />
        </g>
      )}
      <path d={`M${finger} ${base}H${right}`} stroke="var(--ink)" strokeWidth="2" />
      {ticks.map((at) => (
        <g key={at}>
          <path d={`M${x(at)} ${base}v10`} stroke="var(--ink)" strokeWidth="1.5" />
          <text className="ax" x={x(at)} y={base + 29} textAnchor={x(at) > right - 20 ? 'end' : x(at) < finger + 20 ? 'start' : 'middle'}>
            {showAt(at)}
          </text>
        </g>
      ))}
    </svg>
  );
}

interface RulesProps {
  readonly rules: readonly CurveRule[];
  readonly x: (at: number) => number;
  readonly y: (share: number) => number;
  readonly width: number;
  readonly base: number;
}
/** A square each, its words below the curve where nothing else stands, on lines of their own. */
function Rules({ rules, x, y, width, base }: RulesProps): ReactElement {
  return (
    <>
      {rules.map((rule, index) => {
        const at = x(rule.at);
        const isLeft = at > width / 2;
        const line = base - 14 - 24 * index;
        return (
          <g key={rule.label}>
            <path d={`M${at + (index - 0.5) * 8} ${y(rule.met) + 8}V${line - 6}`} stroke="var(--ink)" strokeWidth="1.5" />
            <rect
              x={at - 7 + (index - 0.5) * 8}
              y={y(rule.met) - 7}
              width="14"
              height="14"
              fill="var(--ground)"
              stroke="var(--ink)"
              strokeWidth="2.5"
            />
            <text className="say" x={isLeft ? at - 10 : at + 10} y={line} textAnchor={isLeft ? 'end' : 'start'}>
              {rule.label} <tspan className="sp">{Math.round(100 * rule.met)} of 100</tspan>
            </text>
          </g>
        );
      })}
    </>
  );
}
