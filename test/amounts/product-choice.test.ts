/** Which product brings a nutrient where several could. */
import { describe, expect, test } from 'vitest';
import { civil } from '../../src/base/day.ts';
import { compile } from '../../src/compile.ts';
import { programText } from '../kit.ts';

const LAWN = `kind: lawn
version: 1
id: lawn
location: { latitude: 39, longitude: -84, elevation: 270 m }
grass: tall-fescue
program: program.yaml
areas: { front: { measured: 1000 sqft } }
products:
  - { id: garden, form: granular, analysis: 10-10-10 }
  - { id: feed, form: granular, analysis: 24-0-6 }
  - { id: potash, form: granular, analysis: 0-0-50 }
`;

/** The product that a step's nutrient is taken from. */
function chosen(nutrient: string, shelf = ''): string | null | undefined {
  const program = programText(`  - id: feed
    name: Feed
    work: spread
    window: { opens: { date: 05-01 }, closes: { date: 05-31 } }
    apply: { nutrient: ${nutrient} }
`);
  const { season } = compile({
    lawn: { name: 'lawn.yaml', text: LAWN + shelf },
    lookup: (ref) => (ref === 'program.yaml' ? { name: ref, text: program } : null),
    asOf: civil(2027, 1, 5),
    ledger: null,
    revisedAt: '2027-01-05T06:00:00Z',
    detail: 'quiet',
  });
  return season?.applications[0]?.areas[0]?.product;
}

describe('The product that brings a nutrient', () => {
  test('is without nitrogen where only potash was asked for', () =>
    expect(chosen('{ K2O: 1 lb/1000 sqft }')).toBe('potash'));
  test('is so even where a feed stands on the shelf', () =>
    expect(chosen('{ K2O: 1 lb/1000 sqft }', 'shelf: { feed: 50 lb }\n')).toBe('potash'));
  test('has little phosphate that nobody asked for', () => expect(chosen('{ N: 1 lb/1000 sqft }')).toBe('feed'));
});
