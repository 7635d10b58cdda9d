import { describe, expect, test } from 'vitest';
import { createDocument } from './document.ts';

const start = () => createDocument({ name: 'a', file: { wheels: { rear: '13 in' } }, opened: 0 });

describe('undo of the build file', () => {
  test('edits of one visit to a field are one step back', () => {
    const doc = start();
    doc.setValue(['wheels', 'rear'], '1', 'visit 1');
    doc.setValue(['wheels', 'rear'], '14', 'visit 1');
    doc.setValue(['wheels', 'rear'], '14 in', 'visit 1');
    doc.undo();
    expect(doc.store.getState().file).toEqual({ wheels: { rear: '13 in' } });
    doc.redo();
    expect(doc.store.getState().file).toEqual({ wheels: { rear: '14 in' } });
  });

  test('another visit, or a visit after an undo, is a step of its own', () => {
    const doc = start();
    doc.setValue(['wheels', 'rear'], '14 in', 'visit 1');
    doc.setValue(['wheels', 'rear'], '15 in', 'visit 2');
    doc.undo();
    expect(doc.store.getState().file).toEqual({ wheels: { rear: '14 in' } });
    doc.setValue(['wheels', 'rear'], '16 in', 'visit 2');
    doc.undo();
    expect(doc.store.getState().file).toEqual({ wheels: { rear: '14 in' } });
  });

  test('opening another file can be taken back, with the edits before it', () => {
    const doc = start();
    doc.setValue(['wheels', 'rear'], '14 in', 'visit 1');
    doc.open('b', { other: 1 });
    doc.undo();
    expect(doc.store.getState()).toEqual({ name: 'a', file: { wheels: { rear: '14 in' } }, opened: 0 });
  });

  test('removing a field leaves the old file as it was', () => {
    const doc = start();
    const before = doc.store.getState().file;
    doc.remove(['wheels', 'rear']);
    expect(doc.store.getState().file).toEqual({ wheels: {} });
    expect(before).toEqual({ wheels: { rear: '13 in' } });
  });
});
