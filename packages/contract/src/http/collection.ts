import { z } from 'zod';
import { id } from '../book/basic-values.ts';
import { route } from './route.ts';

const byId = z.strictObject({ id });

/** The routes of one list of the book: all, one, put (new or changed), delete. `example`: an entry that the demo could have. */
export const collection = <S extends z.ZodType>(name: string, thing: string, entry: S, key: string, example: z.input<S>) => ({
  list: route({ method: 'get', path: `/api/${name}`, summary: `All ${name}`, response: z.array(entry), refuses: [404], book: 'reads' }),
  get: route({
    method: 'get',
    path: `/api/${name}/:id`,
    summary: `One ${thing}`,
    params: byId,
    response: entry,
    refuses: [404],
    book: 'reads',
    example: { params: { id: key } },
  }),
  put: route({
    method: 'put',
    path: `/api/${name}/:id`,
    summary: `Put a ${thing}: new if its id is new, else changed`,
    description: 'The id in the path is the id in the body. Asking twice is as asking once.',
    params: byId,
    body: entry,
    response: entry,
    refuses: [404],
    heavy: true,
    book: 'writes',
    example: { params: { id: key }, body: example },
  }),
  delete: route({
    method: 'delete',
    path: `/api/${name}/:id`,
    summary: `Delete a ${thing}; refused while something else in the book names it`,
    params: byId,
    response: z.strictObject({ deleted: id }),
    refuses: [404, 409],
    heavy: true,
    book: 'writes',
    example: { params: { id: key } },
  }),
});
