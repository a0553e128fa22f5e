//! Checks of the workbook.
