//! Every example request under `openapi/examples/length-forecast`.
