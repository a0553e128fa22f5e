//! A table of the core as an Arrow stream.
use std::sync::Arc;

use arrow_array::ffi_stream::FFI_ArrowArrayStream;
use arrow_array::{
    ArrayRef, BooleanArray, Decimal128Array, Float64Array, Int64Array, RecordBatch, RecordBatchIterator,
    RecordBatchOptions, StringArray,
};
use arrow_schema::{ArrowError, DECIMAL128_MAX_PRECISION, DataType, Field, Schema};
use pyo3::exceptions::PyValueError;
use pyo3::prelude::*;
use pyo3::types::PyCapsule;
use takeoff_core::report::tables::{self, Values};
use takeoff_core::units::Money;

/// A table that pandas, polars, pyarrow and DuckDB take without a copy.
///
/// `pyarrow.table(t)`, `polars.DataFrame(t)` and `pandas.DataFrame.from_arrow(t)` read it. The name of a
/// column ends in the unit of its numbers.
#[pyclass(frozen, module = "tilepost._tilepost")]
pub(crate) struct Table {
    batch: RecordBatch,
}

#[pymethods]
impl Table {
    /// The names of the columns, left to right.
    #[getter]
    fn column_names(&self) -> Vec<&str> {
        self.batch.schema_ref().fields().iter().map(|field| field.name().as_str()).collect()
    }

    /// How many rows it has.
    #[getter]
    fn num_rows(&self) -> usize {
        self.batch.num_rows()
    }

    fn __len__(&self) -> usize {
        self.batch.num_rows()
    }

    fn __repr__(&self) -> String {
        format!("<tilepost.Table: {} rows of {}>", self.batch.num_rows(), self.column_names().join(", "))
    }

    /// The table as an Arrow C stream, which is how libraries take it. Types are as they are: what a
    /// consumer asks for is not converted.
    #[pyo3(signature = (requested_schema=None))]
    fn __arrow_c_stream__<'py>(
        &self,
        py: Python<'py>,
        requested_schema: Option<&Bound<'py, PyAny>>,
    ) -> PyResult<Bound<'py, PyCapsule>> {
        let _ = requested_schema;
        let batches = RecordBatchIterator::new([Ok(self.batch.clone())], self.batch.schema());
        PyCapsule::new_with_value(py, FFI_ArrowArrayStream::new(Box::new(batches)), c"arrow_array_stream")
    }
}

impl TryFrom<tables::Table<'_>> for Table {
    type Error = PyErr;

    fn try_from(table: tables::Table<'_>) -> PyResult<Table> {
        let columns = table.columns().iter().map(|column| (column.name, array(&column.values)));
        let (fields, arrays): (Vec<Field>, Vec<ArrayRef>) =
            columns.map(|(name, array)| (Field::new(name, array.data_type().clone(), true), array)).unzip();
        let rows = RecordBatchOptions::new().with_row_count(Some(table.rows()));
        RecordBatch::try_new_with_options(Arc::new(Schema::new(fields)), arrays, &rows)
            .map(|batch| Table { batch })
            .map_err(|error: ArrowError| PyValueError::new_err(error.to_string()))
    }
}

fn array(values: &Values<'_>) -> ArrayRef {
    match values {
        Values::Text(texts) => Arc::new(texts.iter().map(Option::as_deref).collect::<StringArray>()),
        Values::Number(numbers) => Arc::new(Float64Array::from(numbers.clone())),
        Values::Money(amounts) => Arc::new(decimals(amounts)),
        Values::Whole(numbers) => Arc::new(Int64Array::from(numbers.clone())),
        Values::Flag(flags) => Arc::new(BooleanArray::from(flags.clone())),
    }
}

/// Amounts with as many decimals as the finest of them has.
fn decimals(amounts: &[Option<Money>]) -> Decimal128Array {
    let scale = amounts.iter().flatten().map(|amount| amount.amount().scale()).max().unwrap_or(0);
    let whole = |amount: &Option<Money>| {
        let amount = (*amount)?.amount();
        amount.mantissa().checked_mul(10_i128.checked_pow(scale - amount.scale())?)
    };
    let column: Decimal128Array = amounts.iter().map(whole).collect();
    column.with_data_type(DataType::Decimal128(DECIMAL128_MAX_PRECISION, scale as i8))
}
