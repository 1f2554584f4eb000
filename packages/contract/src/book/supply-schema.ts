import type { Need, Offer, Order, Place, StockMove, Supplier } from '@twistwright/books';
import { z } from 'zod';
import { amount, count, countOrNone, currency, id, localDate, localTime, name, weight } from './basic-values.ts';
import { byText } from './record.ts';

export const placeSchema = z
  .strictObject({
    id,
    name,
    kind: z.enum(['home', 'car', 'case', 'apron', 'other']),
    pockets: z.exactOptional(z.array(id).max(1000)),
    room: z.exactOptional(count),
  })
  .meta({ id: 'Place', description: 'Where stock lies' }) satisfies z.ZodType<Place>;

export const supplierSchema = z
  .strictObject({
    id,
    name,
    currency: z.exactOptional(currency),
    leadWorkingDays: z.int().min(0).max(365),
    orderBefore: z.exactOptional(localTime),
    carriage: amount,
    freeFrom: z.exactOptional(amount),
    leastOrder: z.exactOptional(amount),
    closedOn: z.exactOptional(z.array(localDate).max(2000)),
    site: z.exactOptional(name),
  })
  .meta({ id: 'Supplier', description: 'A shop' }) satisfies z.ZodType<Supplier>;

export const offerSchema = z
  .strictObject({
    id,
    supplier: id,
    item: id,
    count,
    price: amount,
    breaks: z.exactOptional(z.array(z.strictObject({ bags: count, price: amount })).max(50)),
    mostBags: z.exactOptional(count),
    reference: z.exactOptional(name),
    mix: z.exactOptional(byText(weight)),
  })
  .meta({ id: 'Offer', description: 'A supplier sells bags of so many pieces of one item' }) satisfies z.ZodType<Offer>;

export const orderSchema = z
  .strictObject({
    id,
    supplier: id,
    orderedOn: localDate,
    expectedOn: localDate,
    lines: z.array(z.strictObject({ offer: z.exactOptional(id), item: id, bags: count, count, price: amount })).max(10_000),
    carriage: amount,
    arrivedOn: z.exactOptional(localDate),
  })
  .meta({ id: 'Order', description: 'Something ordered' }) satisfies z.ZodType<Order>;

export const needSchema = z
  .strictObject({ id, item: id, count, by: localDate, why: z.exactOptional(name) })
  .meta({ id: 'Need', description: 'A need entered by hand' }) satisfies z.ZodType<Need>;

const move = { id, day: localDate, item: id };
export const stockMoveSchema = z
  .discriminatedUnion('kind', [
    z.strictObject({
      ...move,
      kind: z.literal('arrived'),
      place: id,
      bags: count,
      perBag: count,
      bagPrice: z.exactOptional(amount),
      order: z.exactOptional(id),
      goodUntil: z.exactOptional(localDate),
    }),
    z.strictObject({ ...move, kind: z.literal('found'), place: id, count }),
    z.strictObject({ ...move, kind: z.literal('opened'), place: id, perBag: count }),
    z.strictObject({ ...move, kind: z.literal('moved'), from: id, to: id, count }),
    z.strictObject({ ...move, kind: z.literal('used'), place: id, count, gig: z.exactOptional(id) }),
    z.strictObject({ ...move, kind: z.literal('lost'), place: id, count, why: z.exactOptional(name) }),
    z.strictObject({
      ...move,
      kind: z.literal('counted'),
      place: id,
      count: countOrNone,
      bags: z.exactOptional(z.array(z.strictObject({ perBag: count, bags: count })).max(100)),
    }),
  ])
  .meta({ id: 'StockMove', description: 'One line of the ledger of stock' }) satisfies z.ZodType<StockMove>;
