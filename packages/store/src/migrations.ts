import type { Kysely } from 'kysely';
import type { Migration } from 'kysely/migration';

/** Column lists are frozen here: a migration that has run anywhere never changes, later ones only add. */
const first: Readonly<Record<string, readonly string[]>> = {
  size: [
    'code text key',
    'shape text',
    'diameter_inches double',
    'length_inches double',
    'flat_inches double',
    'stretch double',
    'tail_per_bubble_inches double',
    'source text',
  ],
  colour: ['id text key', 'name text', 'body text'],
  item: [
    'id text key',
    'kind text',
    'name text',
    'size text',
    'colour text',
    'finish text',
    'print text',
    'chance_of_pop double',
    'shelf_months double',
  ],
  figure: [
    'id text key',
    'name text',
    'recipe text',
    'colourways text',
    'minutes text',
    'extras text',
    'difficulty double',
    'tags text',
    'worth double',
  ],
  artist: ['id text key', 'name text', 'pace double', 'figures text'],
  place: ['id text key', 'name text', 'kind text', 'pockets text', 'room bigint'],
  supplier: [
    'id text key',
    'name text',
    'currency text',
    'lead_working_days bigint',
    'order_before text',
    'carriage bigint',
    'free_from bigint',
    'least_order bigint',
    'closed_on text',
    'site text',
  ],
  offer: [
    'id text key',
    'supplier text',
    'item text',
    'count bigint',
    'price bigint',
    'breaks text',
    'most_bags bigint',
    'reference text',
    'mix text',
  ],
  client: ['id text key', 'name text', 'contact text'],
  gig: [
    'id text key',
    'name text',
    'kind text',
    'day text',
    'starts text',
    'ends text',
    'zone text',
    'client text',
    'where text',
    'artists text',
    'guests double',
    'arrivals text',
    'menu text',
    'line text',
    'breaks text',
    'premade text',
    'special text',
    'tables text',
    'strolling text',
    'order text',
    'class_plan text',
    'weather text',
    'outdoors smallint',
    'agreement text',
    'packed text',
    'notes text',
  ],
  need: ['id text key', 'item text', 'count bigint', 'by text', 'why text'],
  purchase_order: [
    'id text key',
    'supplier text',
    'ordered_on text',
    'expected_on text',
    'lines text',
    'carriage bigint',
    'arrived_on text',
  ],
  stock_move: [
    'id text key',
    'day text',
    'item text',
    'kind text',
    'place text',
    'bags text',
    'per_bag bigint',
    'bag_price bigint',
    'order text',
    'good_until text',
    'count bigint',
    'from text',
    'to text',
    'gig text',
    'why text',
  ],
};

export const migrations: Readonly<Record<string, Migration>> = {
  '0001_book': {
    async up(db: Kysely<unknown>): Promise<void> {
      await db.schema
        .createTable('business')
        .addColumn('id', 'text', (column) => column.primaryKey())
        .addColumn('laid_on', 'text')
        .addColumn('business', 'text', (column) => column.notNull())
        .addColumn('settings', 'text')
        .addColumn('has_sizes', 'smallint', (column) => column.notNull().defaultTo(0))
        .addColumn('revision', 'bigint', (column) => column.notNull())
        .execute();
      for (const [table, columns] of Object.entries(first)) {
        let create = db.schema.createTable(table).addColumn('position', 'bigint', (column) => column.notNull());
        for (const text of columns) {
          const [name = '', kind = '', key] = text.split(' ');
          const type = kind === 'double' ? 'double precision' : (kind as 'text' | 'bigint' | 'smallint');
          create = create.addColumn(name, type, (column) => (key === 'key' ? column.primaryKey() : column));
        }
        await create.execute();
      }
      await db.schema.createIndex('gig_day').on('gig').column('day').execute();
      await db.schema.createIndex('stock_move_item').on('stock_move').columns(['item', 'day']).execute();
      await db.schema.createIndex('offer_item').on('offer').column('item').execute();
    },
  },
  '0002_kits': {
    async up(db: Kysely<unknown>): Promise<void> {
      await db.schema
        .createTable('saved_kit')
        .addColumn('position', 'bigint', (column) => column.notNull())
        .addColumn('id', 'text', (column) => column.primaryKey())
        .addColumn('name', 'text')
        .addColumn('saved_on', 'text')
        .addColumn('wishes', 'text')
        .addColumn('lines', 'text')
        .addColumn('tools', 'text')
        .execute();
    },
  },
  '0003_balloon_tests': {
    async up(db: Kysely<unknown>): Promise<void> {
      await db.schema.alterTable('item').addColumn('maker', 'text').execute();
      await db.schema
        .createTable('balloon_test')
        .addColumn('position', 'bigint', (column) => column.notNull())
        .addColumn('id', 'text', (column) => column.primaryKey())
        .addColumn('day', 'text')
        .addColumn('size', 'text')
        .addColumn('maker', 'text')
        .addColumn('item', 'text')
        .addColumn('flat_inches', 'text')
        .addColumn('full_inches', 'text')
        .addColumn('twists', 'text')
        .addColumn('note', 'text')
        .execute();
    },
  },
};
