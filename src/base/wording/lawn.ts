import { type Expected, error, type Found, list, meant, note, type Step, type Word, warning } from './forms.ts';

type PanFault = 'centre' | 'short' | 'humps';
const PAN_FAULTS: Readonly<Record<PanFault, string>> = {
  centre: 'the middle of the row caught nothing',
  short: 'the row ends before a pan caught half of what the middle caught, so it has to be wider',
  humps: 'the catch does not fall off from the middle to the sides alone',
};

/** Problems of lawns and products. */
export const lawn = {
  // Lawn
  'area-shape': error(
    (a: { found: string; allowed: readonly string[] }) =>
      `An area has exactly one shape; found ${a.found}. Shapes: ${list(a.allowed)}.`,
  ),
  'area-crossing': error(
    (a: { first: number; second: number }) =>
      `Edges ${a.first} and ${a.second} of the polygon cross. Go around the area once, corner by corner.`,
  ),
  'area-crossing-at': error(
    (a: { first: number; second: number; where: string }) =>
      `Edges ${a.first} and ${a.second} cross at about ${a.where} (latitude, longitude). Take out the points that lead there twice.`,
  ),
  'geojson-type': error(
    (a: Expected) => `GeoJSON of type ${a.found} is no area; expected ${a.expected}. Save the outline as a polygon.`,
  ),
  'geojson-several': error(
    (a: Found) => `An area is one polygon; this list holds ${a.found}. Save each area in a file of its own.`,
  ),
  'geojson-hole': error(
    (a: { hole: number }) =>
      `Hole ${a.hole} of the polygon reaches outside of it or into another hole. Draw holes inside the outline, apart from each other.`,
  ),
  'area-part': warning(
    (a: { part: number; what: string }) =>
      `Part ${a.part} that is taken off ${a.what}; all of it is taken off nevertheless. Check where it lies ("at").`,
  ),
  'area-far': warning(
    (a: { where: string; hint: string }) =>
      `This area lies at ${a.where} (latitude, longitude), far from its lawn.${a.hint} Check the order: "points" are latitude, longitude, GeoJSON is longitude, latitude.`,
  ),
  'area-setback-edge': error(
    (a: Expected) =>
      `The setback names ${a.found}; expected ${a.expected}. The drawing of "soilclock areas" numbers them.`,
  ),
  'area-setback-form': error(
    (a: Found) =>
      `A setback needs the form of the area, and this one is known by ${a.found} alone. Measure it as a shape.`,
  ),
  'area-setback-splits': error(
    (a: Found) =>
      `The setback leaves ${a.found} that do not hang together. Measure each as an area of its own, with its own setback.`,
  ),
  'area-corners': error(
    (a: Found) => `A polygon needs at least three corners that are not on one line; found ${a.found}.`,
  ),
  'area-empty': error(
    (a: { over: string | null }) =>
      `Nothing is left of the area${a.over === null ? '' : `: what is taken off is ${a.over} larger`}. Check the shape and what is taken off.`,
  ),
  'area-triangle': error(
    (a: Found) => `Sides ${a.found} do not close to a triangle: one is as long as the other two together.`,
  ),
  'zone-stale': warning(
    (a: Found & { since: string; clock: string }) =>
      `The zone data of this Node does not know the rules of "${a.found}" since ${a.since}. Hours are reckoned by those rules, UTC${a.clock} all year; take a newer Node when there is one.`,
  ),
  'grass-mismatch': warning((a: Expected) => `The lawn is ${a.found}; the program is written for ${a.expected}.`),

  'local-rule': error((_: Found) => 'A "limit" needs "yearly", "single" or both: a rate such as 3 lb/1000 sqft.'),
  'turf-both': error((_: Found) => 'Turf is either seeded or sodded; name the one day that counts.'),

  'sprayer-output': error(
    (_: Found) =>
      'A sprayer says in one way how much it puts down: output (1 gal/1000 sqft), a catch-test or a nozzle-test. Keep one of them.',
  ),
  'sprayer-odd': warning(
    (a: Found & { least: string; most: string }) =>
      `The sprayer would put down ${a.found}; sprayers of lawns put down ${a.least} to ${a.most}. Look at the amounts, lengths and times again, and at their units. It is reckoned with as it stands.`,
  ),
  'soil-test-much': warning(
    (a: Found & { what: 'lime' | 'P2O5' | 'K2O'; most: string }) =>
      `${a.found} of ${a.what} is more than a laboratory asks of a lawn (${a.most} at most). Look at the report again, and at its unit. It is reckoned with as it stands.`,
  ),
  'soil-test-lime': warning(
    (a: { pH: number; goal: number | null }) =>
      `Lime is asked for at pH ${a.pH}, ${a.goal === null ? 'where the soil is not acid' : `at or above the goal of ${a.goal}`}. Look at the report again. It is reckoned with as it stands.`,
  ),
  'sprayer-caught-in': error(
    (_: Found) =>
      'With "caught-in" the catch test needs "time", the time that the course took; leave both out where they are the same.',
  ),

  'no-sprayer': error(
    (a: { metric: boolean }) =>
      `The lawn names no sprayer. Add it: equipment: { sprayer: ${
        a.metric
          ? '{ tank: 15 L, output: 4 L/100 m2 } }. In place of output, what you measured: catch-test: { course: [5 m, 10 m], caught: 2 L }'
          : '{ tank: 4 gal, output: 1 gal/1000 sqft } }. In place of output, what you measured: catch-test: { course: [18.5 ft, 18.5 ft], caught: 40 fl oz }'
      }.`,
  ),
  'not-sprayed': error(
    (a: Step & { allowed: readonly string[] }) =>
      `Step "${a.step}" is not sprayed here: its product is not a liquid or soluble one, or it puts nothing down. ${
        a.allowed.length === 0 ? 'No step of this season is.' : `Sprayed are: ${list(a.allowed)}.`
      }`,
  ),

  // Spreaders
  'spreader-swath': error(
    (_: Found) => 'A spreader has "swath" or "pans", not both; keep the one that was measured last.',
  ),
  'spreader-pans': error(
    (a: { fault: PanFault }) =>
      `The pans give no width of a pass: ${PAN_FAULTS[a.fault]}. Test again, or write "swath" in place of "pans".`,
  ),
  'spreader-skew': warning(
    (a: { percent: number; side: 'left' | 'right' }) =>
      `The ${a.side} side of the pan test caught ${a.percent} % of the product. Set the spreader to throw straight, then test again.`,
  ),
  'unknown-spreader': error(
    (a: Word) =>
      `There is no spreader "${a.found}".${meant(a.nearest)} Spreaders: ${list(a.allowed) || 'none by name'}.`,
  ),
  'walk-lines': warning(
    (a: { area: string; swath: string }) =>
      `Area "${a.area}" would take more than a thousand lines of ${a.swath}; check both. The way over it is left open.`,
  ),

  // Products
  'nutrient-twice': error(
    (_: Found) => 'A nutrient is asked for as oxide and as element: keep P2O5 or P, and K2O or K.',
  ),
  'unknown-product': error(
    (a: Word) =>
      `There is no product "${a.found}" in the lawn's products.${meant(a.nearest)} Known: ${list(a.allowed) || 'none'}.`,
  ),
  'no-bag-rate': warning(
    (a: Step & { product: string }) =>
      `Step "${a.step}": the products entry of "${a.product}" says neither "covers" nor "package"; a bag rate needs both, so the amount is left open.`,
  ),
  'no-density': warning(
    (a: Step & { product: string }) =>
      `Step "${a.step}": the products entry of "${a.product}" has no "density"; a liquid needs it, so the amount is left open.`,
  ),
  'no-product': warning(
    (a: Step & { need: string }) =>
      `Step "${a.step}": no product of the lawn gives ${a.need}; the dates are planned, the amount is left open.`,
  ),
  'no-label': warning(
    (a: Step & { need: string }) =>
      `Step "${a.step}": no product entry with a label for ${a.need}; the amount reads "from your label".`,
  ),
  'pesticide-rate': warning(
    (a: Step & { product: string }) =>
      `Step "${a.step}": "${a.product}" is a pesticide; the program's rate is passed over, the label entry's is taken.`,
  ),
  'rate-held': warning(
    (a: Step & { area: string; planned: string; held: string; limit: string; cap: string }) =>
      `Step "${a.step}", area "${a.area}": ${a.held} instead of ${a.planned}; the limit "${a.cap}" is ${a.limit}.`,
  ),
  'over-yearly': warning(
    (a: { area: string; planned: string; done: string; limit: string; what: string }) =>
      `Area "${a.area}": ${a.done} done and ${a.planned} planned in the season; the limit "${a.what}" is ${a.limit}.`,
  ),
  'under-yearly': note(
    (a: { area: string; planned: string; least: string }) =>
      `Area "${a.area}": ${a.planned} of nitrogen in the season; the program's range begins at ${a.least}.`,
  ),
  'label-limit-missing': note(
    (a: { product: string; missing: readonly string[] }) =>
      `The label entry of "${a.product}" does not say ${list(a.missing)}; nothing holds it there. Type what the label in hand prints, or keep to it by hand.`,
  ),
  'label-measure': warning(
    (a: { product: string; limit: 'per-application' | 'per-year' }) =>
      `The "${a.limit}" of the label entry of "${a.product}" is by volume and its use by weight, or the other way round; without its "density" that limit cannot be held.`,
  ),
  'nutrients-unknown': warning(
    (a: { product: string }) =>
      `What a rate of "${a.product}" brings of nutrients or lime cannot be worked out without its "density"; it counts in no limit. Write the "density" into its products entry, as in 10 lb/gal.`,
  ),
  'use-unknown': warning(
    (a: { product: string; day: string }) =>
      `The journal's entry of ${a.day} does not say how much of "${a.product}" was used; it counts in no limit. Write "used" into it.`,
  ),
  'active-unknown': warning(
    (a: { product: string; actives: readonly string[] }) =>
      `How much ${list(a.actives)} a rate of "${a.product}" brings cannot be worked out without its "density" or a content such as 4 lb/gal; it counts in no limit of other products.`,
  ),
  'label-rate': error(
    (a: { product: string }) =>
      `The label entry of "${a.product}" has a rate above its own "per-application". Compare both with the label in hand.`,
  ),
  'active-far-above': warning(
    (a: Step & { product: string; active: string; rate: string; times: string; compare: string }) =>
      `Step "${a.step}": by its label entry "${a.product}" brings ${a.rate} of ${a.active}, ${a.times} times the published ${a.compare} that the program compares it with. Compare rate and content with the label in hand; a figure may be mistyped.`,
  ),
  'label-grass': error(
    (a: Step & { product: string; grass: string; grasses: readonly string[] }) =>
      `Step "${a.step}": the label entry of "${a.product}" names ${list(a.grasses)}; this lawn is ${a.grass}.`,
  ),
  'unknown-area': error((a: Word) => `There is no area "${a.found}".${meant(a.nearest)} Areas: ${list(a.allowed)}.`),
} as const;
