/** Currency in the units that messages propose; figures carry the currency of the prices that they came from. */
export const shopCurrency = 'EUR';
