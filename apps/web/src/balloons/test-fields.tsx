import { nameOfItem } from '@twistwright/books';
import { makerKey, type Tube } from '@twistwright/repertoire';
import type { ReactElement, ReactNode } from 'react';
import { useBook } from '../book/use-book.ts';
import { ChoiceField, TextField } from '../parts/field.tsx';
import { Slot } from '../parts/slot.tsx';
import { rubberOf } from '../pictures/rubber.ts';
import { whoseWords } from './balloon-words.ts';
import { FlatPicture, FullPicture, RowPicture } from './how-to-pictures.tsx';
import { type TestDraft, usualTail } from './test-draft.ts';

interface TestFieldsProps {
  readonly draft: TestDraft;
  readonly size: Tube;
  readonly maker: string | undefined;
  readonly problems: Readonly<Record<string, string>>;
  readonly onChange: (draft: TestDraft) => void;
}

/** The test step by step: what to do, and where to write what the ruler says. */
export function TestFields({ draft, size, maker, problems, onChange }: TestFieldsProps): ReactElement {
  const { book } = useBook();
  const set = (part: Partial<TestDraft>): void => onChange({ ...draft, ...part });
  const bag = book.items.find((item) => item.id === draft.item);
  const rubber = rubberOf(book.colours.find((colour) => bag?.kind === 'balloon' && colour.id === bag.colour) ?? { id: 'sky', name: 'sky' });
  const { ruler } = draft;
  const other = (next: string): void => {
    const to = next === 'cm' ? 'cm' : 'in';
    set({ ruler: to, ...(draft.tail === usualTail[ruler] ? { tail: usualTail[to] } : {}) });
  };
  return (
    <div className="teststeps">
      <p className="ask rulerask">
        <span>You measure in</span>
        <Slot
          label="Ruler"
          value={ruler}
          onChange={other}
          options={[
            ['in', 'inches'],
            ['cm', 'centimetres'],
          ]}
        />
      </p>
      <BagChoice size={size} maker={maker} value={draft.item} onChange={(item) => set({ item })} />
      <ol>
        <TestStep
          number={1}
          what="Lay five flat balloons of the bag along a ruler. Measure each from where the knot will be to the tip; fewer will do."
          picture={<FlatPicture rubber={rubber} />}
        >
          <div className="flats">
            {draft.flats.map((text, index) => (
              <TextField
                // biome-ignore lint/suspicious/noArrayIndexKey: balloons on the ruler have no name, only their place
                key={index}
                label={index === 0 ? `1st, ${ruler}` : (['2nd', '3rd', '4th', '5th'][index - 1] ?? '')}
                inputMode="decimal"
                value={text}
                problem={problems[`flat${index}`]}
                onChange={(next) => set({ flats: draft.flats.map((entry, at) => (at === index ? next : entry)) })}
              />
            ))}
          </div>
        </TestStep>
        <TestStep
          number={2}
          what="Pump one up fully, with no tail left, and tie it. Keep your face away: it may burst. Measure from knot to tip."
          picture={<FullPicture rubber={rubber} />}
        >
          <TextField
            label={`Blown up, ${ruler}`}
            inputMode="decimal"
            value={draft.full}
            problem={problems.full}
            onChange={(full) => set({ full })}
          />
        </TestStep>
        <TestStep
          number={3}
          what={`Pump up another, leave ${usualTail[ruler]} ${ruler} flat, and tie it. Twist ten bubbles of ${ruler === 'cm' ? '5 cm' : '2 in'}, then measure the tail that is left.`}
          picture={<RowPicture rubber={rubber} />}
        >
          <div className="flats">
            <TextField
              label="Bubbles"
              inputMode="numeric"
              value={draft.bubbles}
              problem={problems.bubbles}
              onChange={(bubbles) => set({ bubbles })}
            />
            <TextField
              label={`Flat before, ${ruler}`}
              inputMode="decimal"
              value={draft.tail}
              problem={problems.tail}
              onChange={(tail) => set({ tail })}
            />
            <TextField
              label={`Flat after, ${ruler}`}
              inputMode="decimal"
              value={draft.left}
              problem={problems.left}
              onChange={(left) => set({ left })}
            />
          </div>
        </TestStep>
      </ol>
      <p className="note">Use a pump, not the mouth. Pick up burst balloons and cut pieces at once: children can choke on them.</p>
      {problems.nothing !== undefined && <p className="err">{problems.nothing}</p>}
    </div>
  );
}

interface TestStepProps {
  readonly number: number;
  readonly what: string;
  readonly picture: ReactElement;
  readonly children: ReactNode;
}
const TestStep = ({ number, what, picture, children }: TestStepProps): ReactElement => (
  <li>
    <p className="testwhat">
      <b>{number}</b> <span>{what}</span>
    </p>
    {picture}
    {children}
  </li>
);

interface BagChoiceProps {
  readonly size: Tube;
  readonly maker: string | undefined;
  readonly value: string;
  readonly onChange: (item: string) => void;
}
/** Which bag it is, from those of this size that may be of this maker; nothing to choose where the book has none. */
function BagChoice({ size, maker, value, onChange }: BagChoiceProps): ReactElement | null {
  const { book } = useBook();
  const bags = book.items.filter(
    (item) => item.kind === 'balloon' && item.size === size.code && (item.maker === undefined || makerKey(item.maker) === makerKey(maker)),
  );
  if (bags.length === 0) return null;
  return (
    <ChoiceField
      label="Which bag"
      value={value}
      note={`Bags of ${size.code} that are, or may be, ${whoseWords(maker)}.`}
      onChange={onChange}
      options={[{ value: '', text: 'not said' }, ...bags.map((item) => ({ value: item.id, text: nameOfItem(item, book.colours) }))]}
    />
  );
}
