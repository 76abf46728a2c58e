import { createStore, type StoreApi } from 'zustand/vanilla';
import { type Editor, shownAnalysis } from '../editor.ts';
import type { Analysis } from '../store/analysis.ts';
import { type Branch, type Tree, treeOf } from './tree.ts';
import { type Standing, standOn, survivorOf, trailOf } from './walk-tree.ts';

interface ListState extends Standing {
  /** Where to stand when that is gone; it begins with the item itself, so that an undo brings the keys back to it. */
  readonly trail: readonly string[];
}

const made = new WeakMap<Editor, StoreApi<ListState>>();

/** Where the keys stand in the list; kept while the list is shut. */
export function listOf(editor: Editor): StoreApi<ListState> {
  const known = made.get(editor);
  if (known) return known;
  const list = createStore<ListState>(() => ({ at: '', open: new Set(), trail: [] }));
  made.set(editor, list);
  return list;
}

const trees = new WeakMap<Analysis, Tree>();

/** The list of a take: made once, since a take never changes. */
export function treeFor(analysis: Analysis): Tree {
  const known = trees.get(analysis);
  if (known) return known;
  const tree = treeOf(analysis.derived, analysis.notes);
  trees.set(analysis, tree);
  return tree;
}

export const treeNow = (editor: Editor): Tree => treeFor(shownAnalysis(editor));

/** Where the keys stand in a tree: on their item, or what is nearest to where it was. */
export const standingIn = (tree: Tree, { trail }: ListState): Branch | undefined => survivorOf(tree, trail);

export function stand(editor: Editor, tree: Tree, standing: Standing): void {
  listOf(editor).setState({ ...standing, trail: trailOf(tree, standing.at) });
}

/** Goes to an item, wherever it lies. */
export function goTo(editor: Editor, id: string): void {
  const tree = treeNow(editor);
  const branch = tree.byId.get(id);
  if (branch) stand(editor, tree, standOn(listOf(editor).getState(), branch));
}
