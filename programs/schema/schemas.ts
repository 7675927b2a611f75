import * as v from 'valibot';
import { jsonSchemaOf } from '../../src/emit/json-schema.ts';
import { CalendarSchema } from '../../src/model/calendar.ts';
import { EntrySchema } from '../../src/model/journal.ts';
import { LawnSchema } from '../../src/model/lawn.ts';
import { LedgerSchema } from '../../src/model/ledger.ts';
import { ProductsSchema } from '../../src/model/product.ts';
import { ExtendingSchema, ProgramSchema } from '../../src/model/program.ts';
import { PublicationSchema } from '../../src/model/publication.ts';
import { aboutCalendar } from './about-calendar.ts';
import { aboutLawn } from './about-lawn.ts';
import { aboutLedger } from './about-ledger.ts';
import { aboutProgram } from './about-program.ts';
import { aboutPublication } from './about-publication.ts';

/** What editors show beside each key. */
export const about = { ...aboutProgram, ...aboutLawn, ...aboutLedger, ...aboutCalendar, ...aboutPublication };

/** The schemas of the files that people write, by file name. */
export const schemas = () => ({
  program: jsonSchemaOf(v.union([ProgramSchema, ExtendingSchema]), {
    id: 'program',
    title: 'A season program of soilclock',
    about,
  }),
  products: jsonSchemaOf(ProductsSchema, { id: 'products', title: 'Products for soilclock', about }),
  lawn: jsonSchemaOf(LawnSchema, { id: 'lawn', title: 'A lawn of soilclock', about }),
  calendar: jsonSchemaOf(CalendarSchema, {
    id: 'calendar',
    title: 'A calendar of several lawns of soilclock',
    about,
  }),
  publication: jsonSchemaOf(PublicationSchema, { id: 'publication', title: 'A publication of soilclock', about }),
  ledger: jsonSchemaOf(LedgerSchema, { id: 'ledger', title: 'What a feed of soilclock has published', about }),
  journal: jsonSchemaOf(v.array(EntrySchema), { id: 'journal', title: 'The journal of a lawn of soilclock', about }),
});
