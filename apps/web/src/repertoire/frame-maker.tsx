import { readyFrames } from '@twistwright/repertoire';
import { type ReactElement, useState } from 'react';
import { ChoiceField, TextField } from '../parts/field.tsx';
import { sentence } from '../words/counted.ts';
import { useFrame } from './use-frame.ts';

/** A crown, a cage, a solid: from its edges to the fewest balloons, as a recipe. */
export function FrameMaker({ onMade }: { readonly onMade: (recipe: string) => void }): ReactElement {
  const [ready, setReady] = useState('cube');
  const [sides, setSides] = useState('6');
  const [edge, setEdge] = useState('5');
  const [text, setText] = useState('edge A B 5\nedge B C 5\nedge C A 5');
  const [length, setLength] = useState('55');
  const [pops, setPops] = useState('no');
  const isFamily = readyFrames.some((frame) => frame.name === ready && frame.kind === 'family');
  const says = readyFrames.find((frame) => frame.name === ready)?.says;
  const isOwn = ready === '';
  const edgeInches = inchesOf(edge);
  const balloonInches = inchesOf(length);
  const wrongEdge = !isOwn && edgeInches === undefined;
  const wrongLength = length.trim() !== '' && balloonInches === undefined;
  const wish = {
    ready: isOwn ? undefined : isFamily ? `${ready} ${sides.trim()}` : ready,
    edgeInches: edgeInches ?? 5,
    text,
    ...(balloonInches === undefined ? {} : { balloonInches }),
    pops: pops === 'yes',
  };
  const made = useFrame(wrongEdge || wrongLength ? undefined : wish);
  return (
    <div className="form framemaker">
      <ChoiceField
        label="Frame"
        value={ready}
        onChange={setReady}
        note={says === undefined ? undefined : `${sentence(says)}.`}
        options={[{ value: '', text: 'my own, typed in' }, ...readyFrames.map(({ name }) => ({ value: name, text: name }))]}
      />
      {isOwn ? (
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
        <TextField
          label="Shortest edge, inflated inches"
          inputMode="decimal"
          value={edge}
          onChange={setEdge}
          problem={wrongEdge ? 'Inches above 0, such as 4.5.' : undefined}
        />
      )}
      {isFamily && <TextField label="Sides" inputMode="numeric" value={sides} onChange={setSides} />}
      <TextField
        label="Inches that one balloon gives"
        inputMode="decimal"
        value={length}
        onChange={setLength}
        note="Empty: as long as needed."
        problem={wrongLength ? 'Inches above 0, such as 55.' : undefined}
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
        {wrongEdge || wrongLength ? 'A length is not right.' : (made?.sentence ?? 'Working it out.')}
      </p>
      <div className="wide">
        <button
          type="button"
          className="btn"
          disabled={made?.recipe === undefined}
          onClick={() => made?.recipe !== undefined && onMade(made.recipe)}
        >
          Use it as the recipe
        </button>
      </div>
    </div>
  );
}

/** A number above 0 with a point or a comma; undefined for anything else. */
function inchesOf(text: string): number | undefined {
  const plain = text.trim().replace(',', '.');
  return /^\d+(\.\d+)?$/u.test(plain) && Number(plain) > 0 ? Number(plain) : undefined;
}
