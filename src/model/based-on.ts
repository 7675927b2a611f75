import { id, map, maybe, text } from './fields.ts';

/** A program that another one is made from, with whom to name for it: what a bundle keeps of each of its parts. */
export const BasedOnSchema = map({ id, name: maybe(text), author: maybe(text), license: maybe(text) });
