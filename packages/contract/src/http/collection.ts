import { z } from 'zod';
import { id } from '../book/basic-values.ts';
import { route } from './route.ts';

const byId = z.strictObject({ id });

/** The routes of one list of the book: all, one, put (new or changed), delete. */
export const collection = <S extends z.ZodType>(name: string, thing: string, entry: S) => ({
  list: route({ method: 'get', path: `/api/${name}`, summary: `All ${name}`, response: z.array(entry) }),
  get: route({ method: 'get', path: `/api/${name}/:id`, summary: `One ${thing}`, params: byId, response: entry }),
  put: route({
    method: 'put',
    path: `/api/${name}/:id`,
    summary: `Put a ${thing}: new if its id is new, else changed. The id in the path is the id in the body`,
    params: byId,
    body: entry,
    response: entry,
  }),
  delete: route({
    method: 'delete',
    path: `/api/${name}/:id`,
    summary: `Delete a ${thing}`,
    params: byId,
    response: z.strictObject({ deleted: id }),
  }),
});
