/** Record values (metres, °C, m/s, kg) in the kennel's units, for the eye. Factors from NIST SP 811, appendix B.8. */
import { figure } from './words.ts';

export type Units = 'imperial' | 'metric';
/** Metres in a mile and in a kilometre (NIST SP 811, appendix B.8). */
export const METRES_IN = { imperial: 1609.344, metric: 1000 } as const;

/** "mi" or "km". */
export const distanceUnit = (units: Units): 'mi' | 'km' => (units === 'imperial' ? 'mi' : 'km');
/** "miles" or "kilometres". */
export const distanceUnitWord = (units: Units): string => (units === 'imperial' ? 'miles' : 'kilometres');

/** Metres as a figure in the kennel's unit, one decimal: "32", "14.5". */
export function distanceFigure(metres: number, units: Units): string {
  return figure(Math.round((metres / METRES_IN[units]) * 10) / 10);
}
/** Metres with the unit: "32 mi". */
export const distanceWords = (metres: number, units: Units): string =>
  `${distanceFigure(metres, units)} ${distanceUnit(units)}`;

/** Average speed over a run: "9.4 mph", "15.1 km/h". */
export function speedWords(metres: number, minutes: number, units: Units): string {
  const perHour = metres / METRES_IN[units] / (minutes / 60);
  return `${figure(Math.round(perHour * 10) / 10)} ${units === 'imperial' ? 'mph' : 'km/h'}`;
}

/** °C as "−18 °C" or in °F. */
export function temperatureWords(celsius: number, units: Units): string {
  return units === 'imperial' ? `${figure(Math.round(celsius * 1.8 + 32))} °F` : `${figure(Math.round(celsius))} °C`;
}

/** m/s as "12 mph" or "19 km/h". */
export function windWords(metresPerSecond: number, units: Units): string {
  const perHour = (metresPerSecond * 3600) / METRES_IN[units];
  return `${figure(Math.round(perHour))} ${units === 'imperial' ? 'mph' : 'km/h'}`;
}
