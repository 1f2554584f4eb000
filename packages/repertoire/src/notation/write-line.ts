import { exhausted } from '@twistwright/units';
import type { Copies, Length, Move, RepeatMove, Steering } from '../recipe.ts';
import type { Line } from './line.ts';

/** One line in its plain form, without indent. The inverse of `readLine`. */
export function writeLine(line: Line): string {
  switch (line.kind) {
    case 'blank':
      return '';
    case 'piece':
      return [
        `balloon ${line.name}: ${line.size} in ${line.role}`,
        ...(line.finish === undefined ? [] : [`finish ${line.finish}`]),
        ...(line.print === undefined ? [] : [`printed ${line.print}`]),
        ...copiesPart(line.copies),
      ].join(', ');
    case 'leave':
    case 'inflate':
    case 'keep':
      return `${line.kind} ${plain(line.inches)}`;
    case 'burp':
    case 'end':
      return line.kind;
    case 'move':
      return [...moveParts(line.move), ...copiesPart(line.copies)].join(', ');
    case 'repeat':
      return `repeat ${copiesText(line.copies)}`;
    case 'minutes':
      return `minutes ${plain(line.minutes)}`;
    case 'finish': {
      const { with: tool, what, on, minutes } = line.finishing;
      const place = on === undefined ? '' : ` on ${on}`;
      return `finish with ${tool}: ${what}${place}${minutes === undefined ? '' : `, ${plain(minutes)} minutes`}`;
    }
    default:
      return exhausted(line);
  }
}

/** A decimal without exponent, which `String` would use below a millionth. */
const plain = (value: number): string => (Math.abs(value) < 1e-6 ? '0' : String(value));

function moveParts(move: Exclude<Move, RepeatMove>): readonly string[] {
  switch (move.kind) {
    case 'bubble':
    case 'pinch':
    case 'fold':
    case 'loop':
    case 'tulip':
    case 'apple':
    case 'roll':
      return [
        `${move.kind} ${lengthText(move.length, move.label)}`,
        ...(move.split ? ['split'] : []),
        ...(move.soft ? ['soft'] : []),
        ...steeringParts(move),
      ];
    case 'flat':
      return [`flat ${lengthText(move.length, move.label)}`, ...steeringParts(move)];
    case 'lock':
      if ('to' in move) return [`lock to ${move.to}`];
      return [move.last === 2 ? 'lock' : `lock last ${move.last}`];
    case 'join':
      return [`join to ${move.to}`];
    case 'mark':
      return [`mark ${move.name}`];
    case 'pop':
      return [move.label === undefined ? 'pop' : `pop ${move.label}`];
    case 'tuck':
      return [`tuck ${move.label} into ${move.into}`];
    case 'trim':
      return ['trim'];
    case 'note':
      return [`note ${move.text}`];
    default:
      return exhausted(move);
  }
}

/** A label that starts with a unit would be read as one; the unit written out keeps it a label. */
function lengthText(length: Length, label: string | undefined): string {
  const said = typeof length === 'number' ? plain(length) : length.part === length.of ? 'rest' : `${length.part}/${length.of} of rest`;
  if (label === undefined) return said;
  const unit = typeof length === 'number' && /^(?:in|inch|inches|cm)(?!\S)/iu.test(label) ? ' in' : '';
  return `${said}${unit} ${label}`;
}

function steeringParts({ aim, facing, bendDegrees, bendToward }: Steering): readonly string[] {
  return [
    ...(aim === undefined ? [] : [aim.join(' ')]),
    ...(facing === undefined ? [] : [`facing ${facing.join(' ')}`]),
    ...(bendDegrees === undefined ? [] : [['bend', plain(bendDegrees), ...(bendToward ?? [])].join(' ')]),
  ];
}

const copiesText = ({ times, mirrored, around }: Copies): string =>
  `x ${times}${mirrored ? ' mirrored' : ''}${around === undefined ? '' : ` around ${around}`}`;
const copiesPart = (copies: Copies | undefined): readonly string[] => (copies === undefined ? [] : [copiesText(copies)]);
