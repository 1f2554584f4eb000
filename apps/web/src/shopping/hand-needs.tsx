import { nameOfItem } from '@twistwright/books';
import { addDays, shortDate } from '@twistwright/units';
import { type ReactElement, useState } from 'react';
import { newId } from '../book/change.ts';
import { useBook } from '../book/use-book.ts';
import { ListSection } from '../business/list-section.tsx';
import { FieldReader } from '../forms/field-reader.ts';
import { ChoiceField, TextField } from '../parts/field.tsx';
import { ItemName } from '../parts/item-name.tsx';
import { counted, sentence } from '../words/counted.ts';

/** Needs beside the gigs, entered by hand; shopping covers them too. */
export function HandNeeds(): ReactElement {
  const { book, today } = useBook();
  const needs = book.needs.filter((need) => need.by >= today);
  const [draft, setDraft] = useState({ item: book.items[0]?.id ?? '', count: '', by: addDays(today, 14) as string, why: '' });
  const [problems, setProblems] = useState<Readonly<Record<string, string>>>({});
  return (
    <ListSection
      heading={needs.length === 0 ? 'Nothing is needed beside the gigs.' : `${sentence(counted(needs.length, 'need'))} beside the gigs.`}
      add="Add a need"
      rows={needs.map((need) => ({
        id: need.id,
        name: `${need.count} ${need.item}`,
        remove: { list: 'needs', remove: need.id },
        shown: (
          <span className="row">
            <b>{need.count}</b> <ItemName book={book} item={need.item} />{' '}
            <span className="note">
              by {shortDate(need.by)}
              {need.why === undefined ? '' : `, ${need.why}`}
            </span>
          </span>
        ),
      }))}
      onAdd={() => {
        const read = new FieldReader();
        const count = read.number('count', draft.count, { example: '40', least: 1, whole: true });
        const by = read.day('by', draft.by);
        if (by !== undefined && by < today) read.refuse('by', `${by} is in the past. Choose a day from ${today} on.`);
        if (draft.item === '') read.refuse('item', 'Add an item in the store first.');
        const why = read.optionalText(draft.why);
        setProblems(read.problems);
        if (!read.isFine || by === undefined) return undefined;
        setDraft({ ...draft, count: '', why: '' });
        return {
          list: 'needs',
          put: { id: newId(`need ${draft.item} ${by}`, book.needs), item: draft.item, count, by, ...(why === undefined ? {} : { why }) },
        };
      }}
    >
      <ChoiceField
        label="Item"
        value={draft.item}
        problem={problems.item}
        options={book.items.map((item) => ({ value: item.id, text: nameOfItem(item, book.colours) }))}
        onChange={(item) => setDraft({ ...draft, item })}
      />
      <TextField
        label="Pieces needed"
        inputMode="numeric"
        value={draft.count}
        problem={problems.count}
        onChange={(count) => setDraft({ ...draft, count })}
      />
      <TextField label="Needed by" type="date" value={draft.by} problem={problems.by} onChange={(by) => setDraft({ ...draft, by })} />
      <TextField label="What for" value={draft.why} onChange={(why) => setDraft({ ...draft, why })} />
    </ListSection>
  );
}
