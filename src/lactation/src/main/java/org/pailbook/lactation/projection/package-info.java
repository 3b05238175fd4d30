/**
 * What will she give in 305 days, on the next test day, on any day, and how sure is that?
 *
 * <p>Entry: {@link BestPrediction#project}, which needs a lactation, a standard from the {@code reference} package and the day as of which
 * it is made; it answers a {@link Projection305}. Works from no test at all (the expectation of the group) to a weight every
 * day. All yields are kg; a total runs over days 1 to 305, the calving day being day 0. Every total is the yield if she is milked
 * to that day; that she may leave or be dried off before is another question. Intervals are prediction intervals and hold the uncertain level
 * of the herd; the lower end is never below what she has already given, as far as that is known.
 *
 * <p>The same kernel adds up yields to date along the group's curve: {@link StandardCurveAccumulations}. ICAR's worked example lactation (10 tests,
 * 284 days; rows from memory) by the four methods, the last three with the shipped Danish Red standard for parity 2 or more:
 *
 * <table>
 * <caption>One lactation by four methods</caption>
 * <tr><th>method</th><th>milk, kg</th><th>fat, kg</th><th>fat, %</th></tr>
 * <tr><td>test interval (published: 4973.2, 190.2, 3.82)</td><td>4973.2</td><td>190.2</td><td>3.82</td></tr>
 * <tr><td>interpolation with standard curves</td><td>5022.9</td><td>200.4</td><td>3.99</td></tr>
 * <tr><td>best prediction (80 % interval 4740 to 5253)</td><td>4996.7</td><td>195.8</td><td>3.92</td></tr>
 * <tr><td>multiple-trait procedure</td><td>5061.5</td><td>196.5</td><td>3.88</td></tr>
 * </table>
 *
 * <p>{@link HerdStandards} learn from a herd's history; {@link PastProjections}, {@link ProjectionAccuracy} and {@link IntervalCalibration} tell
 * how right past projections were and make the intervals hold. On 109 open lactations, each cow projected from the other cows alone,
 * mean absolute error of 305-day milk in percent of the mean (6,208 kg), and share of truths inside the 80 and 95 % intervals:
 *
 * <table>
 * <caption>Accuracy by number of tests</caption>
 * <tr><th>tests</th><th>plain standard</th><th>learned</th><th>inside 80 %</th><th>inside 95 %</th></tr>
 * <tr><td>0</td><td>13.0</td><td>13.0</td><td>.79</td><td>.94</td></tr>
 * <tr><td>1</td><td>10.9</td><td>10.6</td><td>.75</td><td>.98</td></tr>
 * <tr><td>2</td><td>8.8</td><td>8.3</td><td>.82</td><td>.93</td></tr>
 * <tr><td>3</td><td>7.0</td><td>6.7</td><td>.79</td><td>.95</td></tr>
 * <tr><td>4</td><td>5.9</td><td>5.8</td><td>.78</td><td>.94</td></tr>
 * <tr><td>5</td><td>5.3</td><td>5.1</td><td>.76</td><td>.92</td></tr>
 * <tr><td>6</td><td>4.3</td><td>4.3</td><td>.81</td><td>.94</td></tr>
 * <tr><td>7</td><td>3.1</td><td>2.9</td><td>.82</td><td>.98</td></tr>
 * <tr><td>8</td><td>2.8</td><td>2.7</td><td>.84</td><td>.94</td></tr>
 * <tr><td>9</td><td>2.3</td><td>2.3</td><td>.83</td><td>.95</td></tr>
 * <tr><td>10</td><td>2.1</td><td>2.0</td><td>.86</td><td>.96</td></tr>
 * </table>
 *
 * <p>Where a cow has an earlier lactation on record ({@link HerdStandards#forCowWithHerPast}; 22 of the 109), her root mean square error
 * falls from 1240, 952, 718, 605 to 948, 826, 663, 589 kg with 0 to 3 tests; the table does without.
 *
 * <p>What the model itself expects after 1, 2, 3, 5, 8 tests is 9.9, 8.2, 6.8, 4.7, 2.7 %; the measured errors lie within two standard errors
 * of that, so these tests alone do not hold much more. All these cows milked past day 255: real herds err more after few tests.
 *
 * <p>Source: VanRaden 1997, J. Dairy Sci. 80:3015-3022 (abstract read), with correlations of Cole, Null and VanRaden 2009.
 */
package org.pailbook.lactation.projection;
