import { expect, test } from 'vitest';
import { readCoverage } from './read-coverage.ts';

const yaml = `# two bags, one figure
budget: 900
bags:
  - { name: white 260, price: 500 }
  - { name: 260, price: 400 }
figures:
  - name: swan
    value: 5
    anyOf: [[white 260, 260]]
`;
const plain = {
  budget: 900,
  bags: [
    { name: 'white 260', price: 500 },
    { name: '260', price: 400 },
  ],
  figures: [{ name: 'swan', value: 5, anyOf: [['white 260', '260']] }],
};

test('YAML and JSON say the same problem; a name that looks like a number is a name', () => {
  const read = readCoverage(yaml, 'bags.yaml');
  expect(read.ok && read.value).toEqual({
    name: 'coverage',
    ...plain,
    figures: [{ name: 'swan', value: 5, anyOf: [[0, 1]] }],
  });
  expect(readCoverage(JSON.stringify(plain), 'bags.json')).toEqual(read);
});

test.each([
  ['', undefined, 'bags.yaml is empty.'],
  ['- 1\n- 2\n', 1, 'A coverage problem is an object with budget, bags and figures, not [1,2].'],
  [yaml.replace('price: 400', 'price: 4.5'), 5, 'The price of bag 2 is 4.5.'],
  [yaml.replace('[[white 260, 260]]', '[[white 260, 160]]'), 9, 'swan needs 160, which is no bag of this problem.'],
  [': : {[', 1, 'This is not YAML: Nested mappings are not allowed in compact mappings.'],
  ['{"budget": 5,', 1, 'This is not JSON: a key in double quotes was expected here, not the end of the file.'],
])('%j: line %s', (text, line, sentence) => {
  const read = readCoverage(text, 'bags.yaml');
  if (read.ok) throw new Error('read');
  expect([read.error[0]?.line, read.error[0]?.sentence]).toEqual([line, sentence]);
});
