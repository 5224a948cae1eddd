//! Published tapping-drill lists, by name: what the chart on the reader's wall says.
