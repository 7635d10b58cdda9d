import { expect, test } from 'vitest';
import { derived, figureMaker, practice } from './index.ts';

test('a figure gets the prefix of its thing and, where there are some, its words', () => {
  const chain = figureMaker({ id: 'drive.final', of: 'drive final' });
  const source = derived('law of cosines');
  const figure = chain('wrap', 'θ', 'wrap on the driver', 2, 'angle', 'θ = π − 2α', [], source);
  expect(figure).toEqual({
    id: 'drive.final.wrap',
    symbol: 'θ',
    name: 'wrap on the driver, drive final',
    value: 2,
    kind: 'angle',
    formula: 'θ = π − 2α',
    inputs: [],
    source,
  });
  const plain = figureMaker({ id: 'mass' })('total', 'm', 'mass', 90, 'mass', 'm = Σ m_i', [], source);
  expect([plain.id, plain.name]).toEqual(['mass.total', 'mass']);
});

test('the usual source stands where a draft names none, and gives way to its own', () => {
  const usual = derived('sum of the parts');
  const own = practice('weighed');
  const figure = figureMaker({ id: 'mass' }, usual);
  expect(figure('total', 'm', 'mass', 90, 'mass', 'm = Σ m_i', []).source).toEqual(usual);
  expect(figure('total', 'm', 'mass', 90, 'mass', 'm = Σ m_i', [], own).source).toEqual(own);
});
