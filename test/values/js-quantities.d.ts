/** The little of js-quantities that the tests use. */
declare module 'js-quantities' {
  interface Quantity {
    readonly scalar: number;
    to(unit: string): Quantity;
    isCompatible(unit: string): boolean;
  }
  export default function Qty(value: string): Quantity;
  export default function Qty(value: number, unit: string): Quantity;
}
