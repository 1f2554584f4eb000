import { type BookProblemCode, errorAt } from '@twistwright/books';
import type { Problem } from '@twistwright/units';
import type { z } from 'zod';
import { nearestWord } from './nearest-word.ts';
import { PlaceNames, shown } from './place-names.ts';
import { descriptionOf, follow, keysFor } from './walk-schema.ts';

type Issue = z.core.$ZodIssue;
type Path = Problem['path'];

/** Sentences about a value that a schema refused: one problem for each thing that is wrong. */
export function problemsOfIssues(schema: z.ZodType, value: unknown, issues: readonly Issue[]): readonly Problem[] {
  return issues
    .flatMap((issue) => problemsOf(schema, value, issue))
    .map((problem) => ({ ...problem, sentence: capital(problem.sentence) }));
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

function problemsOf(schema: z.ZodType, root: unknown, issue: Issue): readonly Problem[] {
  const path = issue.path.map((key) => (typeof key === 'symbol' ? String(key) : key));
  const isBook = schema.meta()?.id === 'Book';
  const places = new PlaceNames(root, isBook ? 'the book' : 'this');
  const at = follow(schema, root, path);
  const what = places.subject(path);
  const report = (code: BookProblemCode, sentence: string, todo?: string) => [errorAt(code, path, sentence, todo)];
  const hint = at.schema === undefined ? undefined : descriptionOf(at.schema, at.value);
  const wanted = hint === undefined ? undefined : `It takes: ${hint}.`;
  if (at.value === undefined && path.length > 0 && issue.code !== 'unrecognized_keys' && issue.code !== 'invalid_key')
    return report('value.missing', `${places.owner(path)} has no "${path.at(-1)}".`, wanted ?? todoOfChoice(issue));
  switch (issue.code) {
    case 'unrecognized_keys':
      return issue.keys.map((key) => unknownKey(at, [...path, key], key, places.owner([...path, key])));
    case 'invalid_type':
      if (issue.expected === 'object' && path.length === 0 && isBook)
        return report('file.version', 'This is no book: a book is a set of keys.', 'Begin with "book: 1".');
      if (typeof at.value === 'number' && !Number.isFinite(at.value))
        return report('value.number', `${what} is ${at.value}; it has to be a finite number.`);
      return report('value.kind', `${what} has to be ${kindWords[issue.expected] ?? issue.expected}, not ${shown(at.value)}.`, wanted);
    case 'too_big':
      return report(
        'value.range',
        `${what} is ${sizeOf(issue.origin, at.value)}; at most ${issue.maximum}${unitOf(issue.origin)} ${issue.inclusive === false ? '(not included) ' : ''}can be.`,
      );
    case 'too_small':
      return report(
        'value.range',
        `${what} is ${sizeOf(issue.origin, at.value)}; it has to be ${issue.inclusive === false ? 'more than' : 'at least'} ${issue.minimum}${unitOf(issue.origin)}.`,
      );
    case 'invalid_format':
      return report('value.form', `${what} cannot be ${shown(at.value)}.`, wanted);
    case 'invalid_value':
      if (path.length === 1 && path[0] === 'book')
        return report('file.version', `This book is of version ${shown(at.value)}; version 1 can be read.`);
      return choice(issue.values.map(String));
    case 'invalid_union':
      return choice('options' in issue && Array.isArray(issue.options) ? issue.options.map(String) : []);
    case 'invalid_key':
      return report('key.form', `${JSON.stringify(path.at(-1))} cannot be a key of ${places.owner(path)}.`);
    default:
      return report('value.form', `${what} cannot be ${shown(at.value)}: ${issue.message}.`);
  }

  function choice(options: readonly string[]): readonly Problem[] {
    const near = typeof at.value === 'string' ? nearestWord(at.value, options) : undefined;
    const todo = near === undefined ? `Possible: ${options.join(', ')}.` : `"${near}" was meant? Possible: ${options.join(', ')}.`;
    return report('value.choice', `${what} cannot be ${shown(at.value)}.`, todo);
  }
}
const todoOfChoice = (issue: Issue): string | undefined => {
  const options =
    issue.code === 'invalid_value' ? issue.values : issue.code === 'invalid_union' && 'options' in issue ? issue.options : undefined;
  return Array.isArray(options) ? `Possible: ${options.map(String).join(', ')}.` : undefined;
};

function unknownKey(
  at: { readonly schema: z.ZodType | undefined; readonly value: unknown },
  path: Path,
  key: string,
  ofWhat: string,
): Problem {
  const known = (at.schema && keysFor(at.schema, at.value)) ?? [];
  const near = nearestWord(key, known);
  const todo = near === undefined ? `Possible: ${known.join(', ')}.` : `"${near}" was meant?`;
  return errorAt('key.unknown', path, `${ofWhat} has no key "${key}".`, todo);
}

const kindWords: Readonly<Record<string, string>> = {
  string: 'a text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  array: 'a list',
  object: 'a set of keys',
  record: 'a set of keys',
};
const unitOf = (origin: string): string => (origin === 'string' ? ' characters' : origin === 'array' ? ' entries' : '');
const sizeOf = (origin: string, value: unknown): string =>
  origin === 'string' && typeof value === 'string'
    ? `${value.length} characters long`
    : origin === 'array' && Array.isArray(value)
      ? `a list of ${value.length}`
      : shown(value);
