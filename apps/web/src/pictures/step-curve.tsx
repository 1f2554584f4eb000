import type { ReactElement } from 'react';
import { Pinch } from './pinch.tsx';

export interface CurvePoint {
  /** Along the ruler, such as money in minor units. */
  readonly at: number;
  /** Chance that something runs out, 0 to 1. */
  readonly risk: number;
  /** What the risk may really be: Monte-Carlo band, 0 to 1. */
  readonly low: number;
  readonly high: number;
}
export interface StepCurveProps {
  readonly width: number;
  /** Ascending in `at`. */
  readonly points: readonly CurvePoint[];
  readonly chosen?: CurvePoint | undefined;
  /** The rule of thumb, drawn as a square. */
  readonly rule?: { readonly at: number; readonly risk: number; readonly label: string } | undefined;
  readonly showAt: (at: number) => string;
  readonly label: string;
}

/** Money against risk. Steps, because bags are whole; a grey band from 10th to 90th; a twist at what is chosen. */
export function StepCurve({ width, points, chosen, rule, showAt, label }: StepCurveProps): ReactElement {
  const narrow = width < 560;
  const most = Math.max(...points.map((p) => p.at), rule?.at ?? 0, chosen?.at ?? 0, 1) * 1.06;
  const highest = Math.min(1, Math.max(0.1, ...points.map((p) => p.high), chosen?.high ?? 0));
  const right = width - 14;
  const x = (at: number): number => 6 + (at / most) * (width - 20);
  const y = (risk: number): number => 250 - (risk / highest) * 206;
  const guides = [0.1, 0.2, 0.4, 0.6, 0.8, 1].filter((risk) => risk <= highest && (highest < 0.45 || risk !== 0.1));
  const steps = (of: (p: CurvePoint) => number): string =>
    `${points.map((p, i) => (i === 0 ? `M${x(p.at)} ${y(of(p))}` : `H${x(p.at)}V${y(of(p))}`)).join('')}H${x(most)}`;
  const back = [...points]
    .reverse()
    .map((p, i, all) => `L${x(i === 0 ? most : (all[i - 1]?.at ?? most))} ${y(p.low)}L${x(p.at)} ${y(p.low)}`)
    .join('');
  const tick = niceStep(most, narrow ? 3 : 6);
  return (
    <svg viewBox={`0 0 ${width} 290`} width="100%" role="img" aria-label={label}>
      {guides.map((risk, index) => (
        <g key={risk}>
          <path d={`M6 ${y(risk)}H${right}`} stroke="var(--rule-strong)" strokeDasharray="1 5" />
          <text className="ax" textAnchor="end" x={right} y={y(risk) - 6}>
            {Math.round(risk * 100)}
            {index === guides.length - 1 ? (narrow ? ' of 100 run out' : ' of 100: something runs out') : ''}
          </text>
        </g>
      ))}
      <path d={`${steps((p) => p.high)}${back}Z`} fill="color-mix(in srgb, var(--ink) 13%, var(--ground))" />
      <path d={steps((p) => p.risk)} fill="none" stroke="var(--ink)" strokeWidth="2.5" />
      {points.map((p) => (
        <circle key={`${p.at} ${p.risk}`} cx={x(p.at)} cy={y(p.risk)} r="4" fill="var(--ground)" stroke="var(--ink)" strokeWidth="2" />
      ))}
      {rule !== undefined && (
        <RuleOfThumb
          x={x(rule.at)}
          y={y(rule.risk)}
          text={showAt(rule.at)}
          label={rule.label}
          right={right}
          above={Math.min(y(rule.risk) - 84, 176)}
        />
      )}
      {chosen !== undefined && <Chosen x={x(chosen.at)} point={chosen} y={y} text={showAt(chosen.at)} width={width} />}
      <path d={`M6 250H${right}`} stroke="var(--ink)" strokeWidth="2" />
      {Array.from({ length: Math.floor(most / tick) + 1 }, (_, index) => index * tick).map((at) => (
        <g key={at}>
          <path d={`M${x(at)} 250v9`} stroke="var(--ink)" strokeWidth="1.5" />
          <text className="ax" x={x(at)} y="279" textAnchor={at === 0 ? 'start' : x(at) > right - 24 ? 'end' : 'middle'}>
            {showAt(at).replace(/\.0+$/, '')}
          </text>
        </g>
      ))}
    </svg>
  );
}

interface ChosenProps {
  readonly x: number;
  readonly point: CurvePoint;
  readonly y: (risk: number) => number;
  readonly text: string;
  readonly width: number;
}
function Chosen({ x, point, y, text, width }: ChosenProps): ReactElement {
  const isLeft = x > width * 0.6;
  const lineTop = Math.max(40, y(point.high) - 60);
  return (
    <>
      <path d={`M${x} ${y(point.high)}V${lineTop}`} stroke="var(--ink)" strokeWidth="2" />
      <g transform={`translate(${x} 0) rotate(90)`}>
        <Pinch low={y(point.high)} middle={y(point.risk)} high={y(point.low)} y={0} height={22} />
      </g>
      <text className="say" x={isLeft ? x - 10 : x + 10} y={lineTop + 10} textAnchor={isLeft ? 'end' : 'start'}>
        {text} <tspan className="sp">{inHundred(point.risk)} of 100 run out</tspan>
      </text>
    </>
  );
}

interface RuleProps {
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly label: string;
  readonly right: number;
  readonly above: number;
}
function RuleOfThumb({ x, y, text, label, right, above }: RuleProps): ReactElement {
  const isLeft = x > right * 0.5;
  return (
    <>
      <path d={`M${x} ${y - 10}V${above}`} stroke="var(--ink)" strokeWidth="2" />
      <rect x={x - 8} y={y - 8} width="16" height="16" fill="var(--ground)" stroke="var(--ink)" strokeWidth="2.5" />
      <text className="say" textAnchor={isLeft ? 'end' : 'start'} x={isLeft ? Math.min(right, x + 4) : x} y={above - 8}>
        {text} <tspan className="sp">{label}</tspan>
      </text>
    </>
  );
}

/** "7", "under 1". */
const inHundred = (share: number): string => (share > 0 && share < 0.005 ? 'under 1' : String(Math.round(share * 100)));

/** A round step that parts `most` into at most `parts` parts. */
export function niceStep(most: number, parts: number): number {
  const rough = most / parts;
  const power = 10 ** Math.floor(Math.log10(rough));
  const factor = [1, 2, 5, 10].find((f) => f * power >= rough) ?? 10;
  return factor * power;
}
