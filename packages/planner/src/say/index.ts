export { chanceInWords, clockAt, count, counted, headNumber, listed, minutes, oneDecimal, partInWords, range } from './numbers.ts';
export { sayAdvice } from './say-advice.ts';
export { sayCharge, wholeMoney } from './say-charge.ts';
export { sayFitChange } from './say-fit.ts';
export { type Said, sayForecast } from './say-forecast.ts';
export { sayGrowth, sayMilestone } from './say-growth.ts';
export { sayKit, sayMix } from './say-kit.ts';
export { itemName, sayNeeds, shortItems } from './say-needs.ts';
export { sayProof, sayShopping, sayThumb } from './say-shopping.ts';
