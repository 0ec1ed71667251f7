import { z } from 'zod'
import { SHOOT } from './shoot'

/** The shoot file as a JSON Schema (2020-12), made from the schema that reads it. Rules between fields are not in it. */
export const shootJsonSchema = () => ({
  title: 'Emberslate shoot file',
  description: 'One shoot: its cooks, day, people, cameras, shots and card. Quantities are texts with a unit.',
  ...z.toJSONSchema(SHOOT, { io: 'input' }),
})
