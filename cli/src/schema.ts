/** `feedwright schema NAME`: the JSON Schema of a document, made from the same description that reads it. */
import { feedsJsonSchema } from '@feedwright/core/feeds/document';
import { orderJsonSchema } from '@feedwright/core/order/document';
import { policyJsonSchema } from '@feedwright/core/policy/document';
import { entryJsonSchema } from '@feedwright/core/record/document';
import { planJsonSchema } from '@feedwright/core/screen/plan/schema';
import { standingJsonSchema } from '@feedwright/core/screen/standing/schema';
import { refuse } from './fail.ts';
import { printJson } from './print.ts';

const SCHEMAS: Readonly<Record<string, () => object>> = {
  order: orderJsonSchema,
  policy: policyJsonSchema,
  feeds: feedsJsonSchema,
  plan: planJsonSchema,
  standing: standingJsonSchema,
  entry: entryJsonSchema,
};

export function schema(name: string): void {
  const make =
    SCHEMAS[name] ?? refuse('schema', 'argument/name', { text: name, known: Object.keys(SCHEMAS) });
  printJson(make());
}
