//! Many calls of one calculation in one request.

use bearwell_engine::contract::{Answer, Call, Noun};
use serde::{Deserialize, Serialize};

use crate::client::{Client, read};
use crate::error::{Error, Problem};

/// What became of one item of a batch.
#[derive(Debug, Clone, PartialEq)]
pub struct BatchItem<O> {
    /// Name of the item.
    pub id: String,
    /// Its answer or its problem.
    pub outcome: Outcome<O>,
}

/// An answer or a problem.
#[derive(Debug, Clone, PartialEq)]
pub enum Outcome<O> {
    /// The item was answered.
    Answer(Box<Answer<O>>),
    /// The item was refused.
    Problem(Box<Problem>),
}

#[derive(Serialize)]
struct Items<'a, R: Serialize> {
    items: Vec<Item<'a, R>>,
}

#[derive(Serialize)]
struct Item<'a, R: Serialize> {
    id: &'a str,
    request: &'a Call<R>,
}

#[derive(Deserialize)]
struct Results<O> {
    items: Vec<ItemResult<O>>,
}

#[derive(Deserialize)]
struct ItemResult<O> {
    id: String,
    answer: Option<Box<Answer<O>>>,
    problem: Option<Box<Problem>>,
}

impl Client {
    /// Asks many things at once; the results are in the order of the items. A refused item
    /// does not touch the others.
    pub async fn batch<N: Noun>(
        &self,
        items: &[(String, Call<N::Request>)],
    ) -> Result<Vec<BatchItem<N::Outcome>>, Error> {
        let items = items.iter().map(|(id, request)| Item { id, request });
        let body = serde_json::to_vec(&Items {
            items: items.collect(),
        })
        .map_err(Error::Unwritable)?;
        let path = format!("/v1/{}/batch", N::NAME);
        let bytes = self.post(&path, body, "application/json").await?;
        let results: Results<N::Outcome> = read(&bytes)?;
        results.items.into_iter().map(one).collect()
    }
}

fn one<O>(result: ItemResult<O>) -> Result<BatchItem<O>, Error> {
    let outcome = match (result.answer, result.problem) {
        (Some(answer), None) => Outcome::Answer(answer),
        (None, Some(problem)) => Outcome::Problem(problem),
        _ => {
            return Err(Error::Unreadable {
                status: 200,
                reason: format!("item `{}` has not one of answer and problem", result.id),
            });
        }
    };
    Ok(BatchItem {
        id: result.id,
        outcome,
    })
}
