import { planFrame, readFrame, readyFrame, readyFrames, recipeOfFrame, writeRecipe } from '@twistwright/repertoire';
import { type ReactElement, useState } from 'react';
import { ChoiceField, TextField } from '../parts/field.tsx';
import { counted, sentence } from '../words/counted.ts';

/** Edges that are planned while the page waits; more are for the command line. */
const mostEdges = 400;

interface Made {
  readonly sentence: string;
  readonly recipe?: string;
}

/** A crown, a cage, a solid: from its edges to the fewest balloons, as a recipe. */
export function FrameMaker({ onMade }: { readonly onMade: (recipe: string) => void }): ReactElement {
  const [ready, setReady] = useState('cube');
  const [sides, setSides] = useState('6');
  const [edge, setEdge] = useState('5');
  const [text, setText] = useState('edge A B 5\nedge B C 5\nedge C A 5');
  const [length, setLength] = useState('55');
  const [pops, setPops] = useState('no');
  const isFamily = readyFrames.some((frame) => frame.name === ready && frame.kind === 'family');
  const made = makeFrame({
    ready: ready === '' ? undefined : isFamily ? `${ready} ${sides}` : ready,
    edge,
    text,
    length,
    pops: pops === 'yes',
  });
  return (
    <div className="form framemaker">
      <ChoiceField
        label="Frame"
        value={ready}
        onChange={setReady}
        options={[{ value: '', text: 'my own, typed in' }, ...readyFrames.map(({ name }) => ({ value: name, text: name }))]}
      />
      {ready === '' ? (
        <div className="wide">
          <TextField
            label="Edges"
            long
            value={text}
            onChange={setText}
            note="One a line: edge, two joints, inches, a colour role if you like."
          />
        </div>
      ) : (
        <TextField label="Shortest edge, inflated inches" inputMode="decimal" value={edge} onChange={setEdge} />
      )}
      {isFamily && <TextField label="Sides" inputMode="numeric" value={sides} onChange={setSides} />}
      <TextField
        label="Inches that one balloon gives"
        inputMode="decimal"
        value={length}
        onChange={setLength}
        note="Empty: as long as needed."
      />
      <ChoiceField
        label="Pops"
        value={pops}
        onChange={setPops}
        options={[
          { value: 'no', text: 'every bubble stays' },
          { value: 'yes', text: 'bubbles may be popped' },
        ]}
      />
      <p className="wide lead" role="status">
        {made.sentence}
      </p>
      <div className="wide">
        <button
          type="button"
          className="btn"
          disabled={made.recipe === undefined}
          onClick={() => made.recipe !== undefined && onMade(made.recipe)}
        >
          Use it as the recipe
        </button>
      </div>
    </div>
  );
}

interface Wish {
  readonly ready: string | undefined;
  readonly edge: string;
  readonly text: string;
  readonly length: string;
  readonly pops: boolean;
}

/** The frame of a wish as a recipe, and what there is to say about it. */
export function makeFrame({ ready, edge, text, length, pops }: Wish): Made {
  const frame = ready === undefined ? readFrame(text) : readyFrame(ready, Number(edge));
  if (!frame.ok) return { sentence: problemWords(frame.error[0]) };
  if (frame.value.edges.length > mostEdges) return { sentence: `It has ${frame.value.edges.length} edges; here it may have ${mostEdges}.` };
  const plan = planFrame(frame.value, {
    ...(length.trim() === '' ? {} : { balloonInches: Number(length) }),
    ...(pops ? { pops: {} } : {}),
  });
  if (!plan.ok) return { sentence: problemWords(plan.error[0]) };
  const recipe = recipeOfFrame(frame.value, plan.value);
  if (!recipe.ok) return { sentence: problemWords(recipe.error[0]) };
  const { trails, proven, leastBalloons } = plan.value;
  const known = proven ? 'fewer are not possible' : `no order takes fewer than ${leastBalloons}`;
  return {
    sentence: `${sentence(counted(frame.value.edges.length, 'edge'))}, ${counted(trails.length, 'balloon')}; ${known}.`,
    recipe: writeRecipe(recipe.value),
  };
}
const problemWords = (problem: { readonly sentence: string; readonly todo?: string; readonly line?: number } | undefined): string =>
  problem === undefined
    ? ''
    : `${problem.line === undefined ? '' : `Line ${problem.line}: `}${problem.sentence} ${problem.todo ?? ''}`.trim();
