import { useNavigate, useParams } from '@tanstack/react-router';
import type { Book, Colourway, Figure } from '@twistwright/books';
import { piecesOf, readRecipe } from '@twistwright/repertoire';
import { type FormEvent, type ReactElement, useState } from 'react';
import { newId } from '../book/change.ts';
import { useBook, useChangeBook } from '../book/use-book.ts';
import { FigurePicture } from '../figures/figure-picture.tsx';
import { FieldReader, numberText } from '../forms/field-reader.ts';
import { NotSaved } from '../forms/saving.tsx';
import { Page } from '../frame/page.tsx';
import { ChoiceField, Group, TextField } from '../parts/field.tsx';
import { Lost } from './lost.tsx';
import { middleMinutes } from './repertoire.tsx';

/** One figure: what it is made of, in which colours, and how long it takes. */
export function FigureEdit(): ReactElement {
  const { book } = useBook();
  const { figure: id } = useParams({ from: '/open/repertoire/$figure' });
  const known = book.figures.find((figure) => figure.id === id);
  if (id !== 'new' && known === undefined) return <Lost />;
  return <FigureForm known={known} key={id} />;
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
const draftOf = (figure: Figure | undefined): Draft => ({
  name: figure?.name ?? '',
  recipe: figure?.recipe ?? '',
  minutes: figure?.minutes === undefined ? '' : numberText(middleMinutes(figure.minutes)),
  sigma: numberText(figure?.minutes?.law === 'log-normal' ? figure.minutes.sigma : 0.25),
  difficulty: numberText(figure?.difficulty),
  worth: numberText(figure?.worth),
  colourways: figure?.colourways ?? [{ id: 'usual', name: 'usual', fill: {} }],
});

/** Colour roles that a recipe names; none while it cannot be read. */
function rolesOf(recipe: string): readonly string[] {
  const read = recipe.trim() === '' ? undefined : readRecipe(recipe);
  return read?.ok === true ? [...new Set(piecesOf(read.value).map((piece) => piece.role))] : [];
}

function readFigure(book: Book, draft: Draft, known: Figure | undefined): { readonly figure: Figure; readonly read: FieldReader } {
  const read = new FieldReader();
  const name = read.text('name', draft.name, 'what it is called');
  const recipe = draft.recipe.trim();
  if (recipe !== '') {
    const result = readRecipe(recipe);
    const first = result.ok ? undefined : result.error[0];
    if (first !== undefined)
      read.refuse('recipe', `${first.line === undefined ? '' : `Line ${first.line}: `}${first.sentence} ${first.todo ?? ''}`.trim());
  }
  const minutes = read.optionalNumber('minutes', draft.minutes, { example: '2.5', least: 0.05, most: 600 });
  const sigma = read.optionalNumber('sigma', draft.sigma, { example: '0.25', most: 2 }) ?? 0;
  const difficulty = read.optionalNumber('difficulty', draft.difficulty, { example: '2', least: 1, most: 5 });
  const worth = read.optionalNumber('worth', draft.worth, { example: '1', most: 1000 });
  const roles = rolesOf(recipe);
  for (const colourway of draft.colourways)
    for (const role of roles)
      if ((colourway.fill[role] ?? '') === '') read.refuse(`fill.${colourway.id}.${role}`, `Choose a colour for ${role}.`);
  const { recipe: _recipe, minutes: known_, difficulty: _difficulty, worth: _worth, ...kept } = known ?? { id: newId(name, book.figures) };
  const isSameTime = known_ !== undefined && known_.law !== 'log-normal' && minutes === middleMinutes(known_);
  const law = isSameTime ? known_ : minutes === undefined ? undefined : ({ law: 'log-normal', median: minutes, sigma } as const);
  const figure: Figure = {
    ...kept,
    name,
    colourways: draft.colourways,
    ...(recipe === '' ? {} : { recipe }),
    ...(law === undefined ? {} : { minutes: law }),
    ...(difficulty === undefined ? {} : { difficulty }),
    ...(worth === undefined ? {} : { worth }),
  };
  return { figure, read };
}

function FigureForm({ known }: { readonly known: Figure | undefined }): ReactElement {
  const { book } = useBook();
  const { change, error, isSaving } = useChangeBook();
  const navigate = useNavigate();
  const [draft, setDraft] = useState(() => draftOf(known));
  const [problems, setProblems] = useState<Readonly<Record<string, string>>>({});
  const set = (part: Partial<Draft>): void => setDraft({ ...draft, ...part });
  const roles = rolesOf(draft.recipe);
  const back = (): void => void navigate({ to: '/repertoire' });
  const save = (event: FormEvent): void => {
    event.preventDefault();
    const { figure, read } = readFigure(book, draft, known);
    setProblems(read.problems);
    if (read.isFine) change({ list: 'figures', put: figure }, back);
  };
  const title = known?.name ?? 'Add a figure';
  return (
    <Page title={title} whose={book.business.name}>
      <div className="title">
        <h1 className="say">{title}</h1>
      </div>
      <ul className="figs looks">
        {draft.colourways.map((colourway) => (
          <li key={colourway.id}>
            <FigurePicture book={book} name={draft.name} recipe={draft.recipe} colourway={colourway} />
            <span className="shelf" />
            <span className="note">{colourway.name}</span>
          </li>
        ))}
      </ul>
      <form className="form" onSubmit={save} noValidate>
        <TextField label="Name" value={draft.name} problem={problems.name} onChange={(name) => set({ name })} />
        <TextField
          label="Minutes, the middle of ten"
          inputMode="decimal"
          value={draft.minutes}
          problem={problems.minutes}
          note="Pumping and tying included. Empty: estimated from the recipe."
          onChange={(minutes) => set({ minutes })}
        />
        <TextField
          label="How much they vary"
          inputMode="decimal"
          value={draft.sigma}
          problem={problems.sigma}
          note="0 always the same, 0.25 usual, 0.5 a lot."
          onChange={(sigma) => set({ sigma })}
        />
        <TextField
          label="How hard, 1 to 5"
          inputMode="decimal"
          value={draft.difficulty}
          problem={problems.difficulty}
          onChange={(difficulty) => set({ difficulty })}
        />
        <TextField
          label="Worth beside the others"
          inputMode="decimal"
          value={draft.worth}
          problem={problems.worth}
          note="When a menu is chosen for you; 1 if empty."
          onChange={(worth) => set({ worth })}
        />
        <div className="wide">
          <TextField label="Recipe" long value={draft.recipe} problem={problems.recipe} onChange={(recipe) => set({ recipe })} />
        </div>
        {draft.colourways.map((colourway, index) => (
          <ColourwayFields
            key={colourway.id}
            colourway={colourway}
            roles={roles}
            problems={problems}
            onChange={(next) => set({ colourways: draft.colourways.map((entry, at) => (at === index ? next : entry)) })}
            {...(draft.colourways.length > 1
              ? { onRemove: () => set({ colourways: draft.colourways.filter((_, at) => at !== index) }) }
              : {})}
          />
        ))}
        <div className="wide row">
          <button type="submit" className="btn full" disabled={isSaving}>
            Save the figure
          </button>
          <button
            type="button"
            className="btn"
            onClick={() =>
              set({
                colourways: [
                  ...draft.colourways,
                  { id: newId('colours', draft.colourways), name: `colours ${draft.colourways.length + 1}`, fill: {} },
                ],
              })
            }
          >
            Add colours
          </button>
          {known !== undefined && (
            <button type="button" className="btn plain" onClick={() => change({ list: 'figures', remove: known.id }, back)}>
              Take it off the shelf
            </button>
          )}
        </div>
      </form>
      <NotSaved error={error} />
    </Page>
  );
}

interface ColourwayFieldsProps {
  readonly colourway: Colourway;
  readonly roles: readonly string[];
  readonly problems: Readonly<Record<string, string>>;
  readonly onChange: (colourway: Colourway) => void;
  readonly onRemove?: () => void;
}
function ColourwayFields({ colourway, roles, problems, onChange, onRemove }: ColourwayFieldsProps): ReactElement {
  const { book } = useBook();
  const options = [{ value: '', text: 'choose' }, ...book.colours.map((colour) => ({ value: colour.id, text: colour.name }))];
  return (
    <Group legend={`Colours: ${colourway.name}`}>
      <div className="menu-grid">
        <TextField label="Called" value={colourway.name} onChange={(name) => onChange({ ...colourway, name })} />
        {roles.map((role) => (
          <ChoiceField
            key={role}
            label={role}
            value={colourway.fill[role] ?? ''}
            options={options}
            problem={problems[`fill.${colourway.id}.${role}`]}
            onChange={(colour) => onChange({ ...colourway, fill: { ...colourway.fill, [role]: colour } })}
          />
        ))}
      </div>
      {onRemove !== undefined && (
        <button type="button" className="btn plain" onClick={onRemove}>
          Leave out {colourway.name}
        </button>
      )}
    </Group>
  );
}
