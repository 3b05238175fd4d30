/**
 * Tables for a spreadsheet: one address each, as CSV, JSON or workbook.
 *
 * <p>Entry: {@link ReportResource}. A table is one class that implements {@link Report}: its columns, and a walk over its rows; the forms
 * ({@link CsvForm}, {@link JsonTable}, {@link WorkbookTable}), the list of reports and the last four columns come by themselves. Rows are
 * written as they are read, never gathered. Columns are only ever added at the end of a report's own: sheets refer to them by place.
 */
package org.pailbook.records.report;
