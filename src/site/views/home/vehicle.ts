import type { Settings } from '../../../journal/model.ts';

/** `1952 Quernby Ten.`; the title of the journal where nothing is said of the vehicle. */
export function vehicleLine({ vehicle, title }: Settings): string {
  const words = [vehicle.year, vehicle.make, vehicle.model].filter((word) => word !== null);
  return words.length === 0 ? `${title}.` : `${words.join(' ')}.`;
}
