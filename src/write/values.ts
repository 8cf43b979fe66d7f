/** What a note says, as plain data: each scalar is the text that stands there. */
import type { FormField } from './form.ts';

export type Value = string | Value[] | Values;
export interface Values {
  [name: string]: Value;
}

export function isGroup(value: Value | undefined): value is Values {
  return typeof value === 'object' && !Array.isArray(value);
}

export function sameValue(a: Value | undefined, b: Value | undefined): boolean {
  if (Array.isArray(a) && Array.isArray(b)) return a.length === b.length && a.every((item, n) => sameValue(item, b[n]));
  if (!isGroup(a) || !isGroup(b)) return a === b;
  const names = Object.keys(a);
  return names.length === Object.keys(b).length && names.every((name) => sameValue(a[name], b[name]));
}

/** The name of a field that can only be meant by another spelling of it. */
export function meantName(name: string, fields: readonly FormField[]): string {
  const plain = name.toLowerCase().replaceAll(/[\s_]+/g, '-');
  return fields.some((field) => field.name === plain) ? plain : name;
}

/**
 * The values in the shape that a form has: lists where a list may stand, an entry of which only the chief thing is
 * written as an entry, names of fields as the format has them. What the form knows nothing of stays as it is.
 */
export function asForm(values: Values, fields: readonly FormField[]): Values {
  return Object.fromEntries(
    Object.entries(values).map(([written, value]) => {
      const name = meantName(written, fields);
      const field = fields.find((one) => one.name === name);
      return [name, field ? fieldAsForm(value, field) : value];
    }),
  );
}

function fieldAsForm(value: Value, field: FormField): Value {
  if (field.many || field.several) {
    const items = Array.isArray(value) ? value : value === '' ? [] : [value];
    return items.map((item) => itemAsForm(item, field));
  }
  return itemAsForm(value, field);
}

function itemAsForm(value: Value, field: FormField): Value {
  if (field.of === 'fields' && typeof value === 'string' && field.alone !== null) return { [field.alone]: value };
  if (field.of === 'fields' && isGroup(value)) return asForm(value, field.fields);
  const [inside] = field.fields;
  if (field.of !== 'table' || !isGroup(value) || !inside) return value;
  return Object.fromEntries(Object.entries(value).map(([name, one]) => [name, fieldAsForm(one, inside)]));
}

/** Whether each value has the shape that its field in the form shows. */
export function fits(values: Values, fields: readonly FormField[]): boolean {
  return fields.every((field) => {
    const value = values[field.name];
    if (value === undefined || value === '') return true;
    const list = field.many || field.several;
    if (list !== Array.isArray(value)) return false;
    return (Array.isArray(value) ? value : [value]).every((item) => itemFits(item, field));
  });
}

function itemFits(item: Value, field: FormField): boolean {
  if (field.of === 'text') return typeof item === 'string';
  if (!isGroup(item)) return false;
  return field.of === 'fields' ? fits(item, field.fields) : true;
}

/** Without what was left empty: no field, no entry. Texts lose the blanks around them. */
export function withoutEmpty(values: Values): Values {
  return Object.fromEntries(
    Object.entries(values).flatMap(([name, value]) => {
      const kept = filled(value);
      return kept === null ? [] : [[name, kept]];
    }),
  );
}

function filled(value: Value): Value | null {
  if (typeof value === 'string') return value.trim() === '' ? null : value.trim();
  if (Array.isArray(value)) {
    const items = value.flatMap((item) => filled(item) ?? []);
    return items.length === 0 ? null : items;
  }
  const kept = withoutEmpty(value);
  return Object.keys(kept).length === 0 ? null : kept;
}
