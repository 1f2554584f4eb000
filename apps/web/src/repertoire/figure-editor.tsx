import { useNavigate, useParams } from '@tanstack/react-router';
import type { Book, Colourway, Figure } from '@twistwright/books';
import { minutesSpread } from '@twistwright/planner';
import { formatRecipe } from '@twistwright/repertoire';
import { type FormEvent, type KeyboardEvent, type ReactElement, useDeferredValue, useState } from 'react';
import { newId } from '../book/change.ts';
import { useBook, useChangeBook } from '../book/use-book.ts';
import { FieldReader, numberText } from '../forms/field-reader.ts';
import { NotSaved } from '../forms/saving.tsx';
import { Page } from '../frame/page.tsx';
import { Lost } from '../pages/lost.tsx';
import { Because } from '../parts/because.tsx';
import { ChoiceField, Group, TextField } from '../parts/field.tsx';
import type { Design } from './drawing-ask.ts';
import { Svg } from './figure-picture.tsx';
import { FrameMaker } from './frame-maker.tsx';
import { NotationField } from './notation-field.tsx';
import { OtherSize } from './other-size.tsx';
import './repertoire.css';
import { useDesign } from './use-drawing.ts';
import { useUndoable } from './use-undoable.ts';

/** The recipe on one side, what becomes of it on the other. */
export function FigureEditor(): ReactElement {
  const { book } = useBook();
  const { figure: id } = useParams({ from: '/open/repertoire/$figure/edit' });
  const known = book.figures.find((figure) => figure.id === id);
  if (id !== 'new' && known === undefined) return <Lost />;
  return <Editor known={known} key={id} />;
}

interface Draft {
  readonly name: string;
  readonly recipe: string;
  readonly minutes: string;
  readonly sigma: string;
  readonly difficulty: string;
  readonly worth: string;
  readonly colourways: readonly Colourway[];
}
const firstRecipe = `balloon dog: 260 in body
  leave 3.5
  bubble 3 nose, forward
  bubble 2 ear, up left, x 2 mirrored
  lock
  bubble 3 neck, down back
`;
const draftOf = (figure: Figure | undefined): Draft => ({
  name: figure?.name ?? '',
  recipe: figure === undefined ? firstRecipe : (figure.recipe ?? ''),
  minutes: figure?.minutes === undefined ? '' : numberText(Number(minutesSpread(figure.minutes).p50.toFixed(3))),
  sigma: numberText(figure?.minutes?.law === 'log-normal' ? figure.minutes.sigma : 0.25),
  difficulty: numberText(figure?.difficulty),
  worth: numberText(figure?.worth),
  colourways: figure?.colourways ?? [{ id: 'usual', name: 'usual', fill: {} }],
});

/** Roles without a colour get one that the business has, so that there is something to see. */
function filled(book: Book, way: Colourway | undefined, roles: readonly string[]): Colourway {
  const given = way ?? { id: 'usual', name: 'usual', fill: {} };
  const fill = Object.fromEntries(
    roles.map((role, index) => [role, given.fill[role] ?? book.colours[index % Math.max(1, book.colours.length)]?.id ?? 'blue']),
  );
  return { ...given, fill };
}

function readFigure(
  draft: Draft,
  roles: readonly string[],
  known: Figure | undefined,
  book: Book,
): { readonly figure: Figure; readonly read: FieldReader } {
  const read = new FieldReader();
  const name = read.text('name', draft.name, 'what it is called');
  const minutes = read.optionalNumber('minutes', draft.minutes, { example: '2.5', least: 0.05, most: 600 });
  const sigma = read.optionalNumber('sigma', draft.sigma, { example: '0.25', most: 2 }) ?? 0;
  const difficulty = read.optionalNumber('difficulty', draft.difficulty, { example: '2', least: 1, most: 5 });
  const worth = read.optionalNumber('worth', draft.worth, { example: '1', most: 1000 });
  const { recipe: _recipe, minutes: law, difficulty: _difficulty, worth: _worth, ...kept } = known ?? { id: newId(name, book.figures) };
  const isSame = law !== undefined && law.law !== 'log-normal' && draft.minutes === draftOf(known).minutes;
  const figure: Figure = {
    ...kept,
    name,
    colourways: roles.length === 0 ? draft.colourways : draft.colourways.map((way) => filled(book, way, roles)),
    ...(draft.recipe.trim() === '' ? {} : { recipe: draft.recipe }),
    ...(isSame ? { minutes: law } : minutes === undefined ? {} : { minutes: { law: 'log-normal' as const, median: minutes, sigma } }),
    ...(difficulty === undefined ? {} : { difficulty }),
    ...(worth === undefined ? {} : { worth }),
  };
  return { figure, read };
}

function Editor({ known }: { readonly known: Figure | undefined }): ReactElement {
  const { book } = useBook();
  const { change, error, isSaving } = useChangeBook({ fromDraft: true });
  const navigate = useNavigate();
  const { value: draft, set, undo, redo } = useUndoable(() => draftOf(known));
  const [wrong, setWrong] = useState<Readonly<Record<string, string>>>({});
  const [lastRoles, setLastRoles] = useState<readonly string[]>(() => Object.keys(draft.colourways[0]?.fill ?? {}));
  const shownText = useDeferredValue(draft.recipe);
  const { design, isNew } = useDesign({ book, recipe: shownText, colourway: filled(book, draft.colourways[0], lastRoles) });
  const roles = design?.made?.roles ?? lastRoles;
  if (design?.made !== undefined && roles.join('\n') !== lastRoles.join('\n')) setLastRoles(roles);
  const problems = design?.problems ?? [];
  const isBroken = problems.some((problem) => problem.weight === 'error');
  const part = (more: Partial<Draft>, kind?: string): void => set({ ...draft, ...more }, kind);
  const write = (recipe: string): void => part({ recipe }, `typing ${recipe.split(/\s/u).length}`);
  const save = (event: FormEvent): void => {
    event.preventDefault();
    const { figure, read } = readFigure(draft, roles, known, book);
    if (isBroken) read.refuse('recipe', 'The recipe has mistakes; nothing was saved.');
    setWrong(read.problems);
    if (read.isFine)
      change({ list: 'figures', put: figure }, () => void navigate({ to: '/repertoire/$figure', params: { figure: figure.id } }));
  };
  const keys = (event: KeyboardEvent): void => {
    if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== 'z') return;
    const back = event.shiftKey ? redo : undo;
    if (back === undefined) return;
    event.preventDefault();
    back();
  };
  const title = known === undefined ? 'Design a figure' : `Change ${known.name.toLowerCase()}`;
  return (
    <Page title={title} whose={book.business.name}>
      <div className="title">
        <h1 className="say">{title}</h1>
      </div>
      <form onSubmit={save} onKeyDown={keys} noValidate aria-label={title}>
        <div className="designing">
          <div>
            <TextField label="Name" value={draft.name} problem={wrong.name} onChange={(name) => part({ name }, 'name')} />
            <div className="notationbox">
              <NotationField value={draft.recipe} problems={problems} onChange={write} onWord={(recipe) => part({ recipe })}>
                <div className="row">
                  <button type="button" className="btn" disabled={undo === undefined} onClick={() => undo?.()}>
                    Undo
                  </button>
                  <button type="button" className="btn" disabled={redo === undefined} onClick={() => redo?.()}>
                    Do it again
                  </button>
                  <button
                    type="button"
                    className="btn plain"
                    disabled={isBroken}
                    onClick={() => {
                      const tidy = formatRecipe(draft.recipe);
                      if (tidy.ok) part({ recipe: tidy.value });
                    }}
                  >
                    Tidy it up
                  </button>
                </div>
              </NotationField>
            </div>
          </div>
          <Outcome design={design} isNew={isNew && shownText === draft.recipe} name={draft.name} />
        </div>
        <Because ask="Begin with a frame?">
          <FrameMaker onMade={(recipe) => part({ recipe })} />
        </Because>
        <Because ask="Make it from another size?">
          <OtherSize recipe={draft.recipe} onMade={(recipe) => part({ recipe })} />
        </Because>
        <section>
          <h2>Colours and minutes.</h2>
          <div className="form">
            {draft.colourways.map((way, index) => (
              <WayFields
                key={way.id}
                way={way}
                shown={filled(book, way, roles)}
                roles={roles}
                isOnly={draft.colourways.length === 1}
                onChange={(next) =>
                  part({
                    colourways:
                      next === undefined
                        ? draft.colourways.filter((_, at) => at !== index)
                        : draft.colourways.map((entry, at) => (at === index ? next : entry)),
                  })
                }
              />
            ))}
            <TextField
              label="Minutes, the middle of ten"
              inputMode="decimal"
              value={draft.minutes}
              problem={wrong.minutes}
              note="Pumping and tying included. Empty: estimated from the recipe."
              onChange={(minutes) => part({ minutes }, 'minutes')}
            />
            <TextField
              label="How much they vary"
              inputMode="decimal"
              value={draft.sigma}
              problem={wrong.sigma}
              note="0 always the same, 0.25 usual, 0.5 a lot."
              onChange={(sigma) => part({ sigma }, 'sigma')}
            />
            <TextField
              label="How hard, 1 to 5"
              inputMode="decimal"
              value={draft.difficulty}
              problem={wrong.difficulty}
              onChange={(difficulty) => part({ difficulty }, 'difficulty')}
            />
            <TextField
              label="Worth beside the others"
              inputMode="decimal"
              value={draft.worth}
              problem={wrong.worth}
              note="When a menu is chosen for you; 1 if empty."
              onChange={(worth) => part({ worth }, 'worth')}
            />
          </div>
        </section>
        {wrong.recipe !== undefined && <p className="err">{wrong.recipe}</p>}
        <div className="row saverow">
          <button type="submit" className="btn full" disabled={isSaving}>
            Save the figure
          </button>
          <button
            type="button"
            className="btn"
            onClick={() =>
              part({
                colourways: [
                  ...draft.colourways,
                  {
                    id: newId('colours', draft.colourways),
                    name: `colours ${draft.colourways.length + 1}`,
                    fill: draft.colourways[0]?.fill ?? {},
                  },
                ],
              })
            }
          >
            Add colours
          </button>
          {known !== undefined && (
            <button
              type="button"
              className="btn plain"
              onClick={() => change({ list: 'figures', remove: known.id }, () => void navigate({ to: '/repertoire' }))}
            >
              Take it off the shelf
            </button>
          )}
        </div>
      </form>
      <NotSaved error={error} />
    </Page>
  );
}

interface OutcomeProps {
  readonly design: Design | undefined;
  readonly isNew: boolean;
  readonly name: string;
}
/** Picture, air and verdict of what is written. While a line is wrong, the last picture that could be drawn stays. */
function Outcome({ design, isNew, name }: OutcomeProps): ReactElement {
  const [last, setLast] = useState(design?.made);
  const made = design?.made ?? last;
  if (design?.made !== undefined && design.made !== last) setLast(design.made);
  const worst = made?.pieces.find((piece) => piece.verdict === 'does not fit') ?? made?.pieces.find((piece) => piece.verdict === 'tight');
  return (
    <div className="outcome" aria-busy={!isNew}>
      <div className="stage">
        <Svg svg={made?.svg} says={`${name === '' ? 'The figure' : name} as it is written`} />
        <span className="shelf" />
      </div>
      {made === undefined ? (
        <p className="lead">Write a line, and the figure stands here.</p>
      ) : (
        <>
          {design !== undefined && design.made === undefined && <p className="note">As it was before the mistake.</p>}
          <p className="lead" role="status">
            <b>
              {worst === undefined ? 'It fits.' : worst.verdict === 'tight' ? 'It is tight.' : `“${worst.name}” does not fit its balloon.`}
            </b>{' '}
            {made.bubbles} {made.bubbles === 1 ? 'bubble' : 'bubbles'}, about {made.minutes.toFixed(1)} min.
          </p>
          {worst?.changes.slice(0, 3).map((entry) => (
            <p className="note" key={entry.sentence}>
              {entry.sentence}
            </p>
          ))}
          <table className="airtable">
            <thead>
              <tr>
                <th scope="col">Balloon</th>
                <th scope="col" className="num">
                  up to
                </th>
                <th scope="col" className="num">
                  leave flat
                </th>
                <th scope="col">verdict</th>
              </tr>
            </thead>
            <tbody>
              {made.pieces.map((piece) => (
                <tr key={piece.piece} className="plainrow">
                  <td>
                    {piece.count > 1 ? `${piece.count} × ` : ''}
                    {piece.name}, {piece.size}
                  </td>
                  <td className="num">{piece.inflatedInches.toFixed(1)} in</td>
                  <td className="num">{piece.tailInches > 0 ? `${piece.tailInches.toFixed(1)} in` : ''}</td>
                  <td>{piece.verdict}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </>
      )}
    </div>
  );
}

interface WayFieldsProps {
  readonly way: Colourway;
  readonly shown: Colourway;
  readonly roles: readonly string[];
  readonly isOnly: boolean;
  /** Without a value it is taken away. */
  readonly onChange: (way: Colourway | undefined) => void;
}
function WayFields({ way, shown, roles, isOnly, onChange }: WayFieldsProps): ReactElement {
  const { book } = useBook();
  return (
    <Group legend={way.name}>
      <div className="form">
        <TextField label="Called" value={way.name} onChange={(name) => onChange({ ...way, name })} />
        {roles.map((role) => (
          <ChoiceField
            key={role}
            label={`Colour of ${role}`}
            value={shown.fill[role] ?? ''}
            onChange={(colour) => onChange({ ...way, fill: { ...shown.fill, [role]: colour } })}
            options={book.colours.map(({ id, name }) => ({ value: id, text: name }))}
          />
        ))}
        {!isOnly && (
          <button
            type="button"
            className="btn plain"
            aria-label={`Take these colours away: ${way.name}`}
            onClick={() => onChange(undefined)}
          >
            Take these colours away
          </button>
        )}
      </div>
    </Group>
  );
}
