//! A document as read, before anybody asks what it means: values in the order they stand in the text.
use std::borrow::Cow;

use serde_json::Number;

/// Place of a value in its [`Document`]; places compare in the order of the text.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct At(u32);

impl At {
    /// The whole document.
    pub(crate) const ROOT: At = At(0);
}

/// A value; what a list or an object holds stands in the tree right behind it.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Value<'a> {
    Null,
    Bool(bool),
    Number(Number),
    Text(Cow<'a, str>),
    List,
    Object,
}

/// Key of a value in the list or object that holds it.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Key<'a> {
    Root,
    Index(u32),
    Name(Cow<'a, str>),
}

#[derive(Debug)]
struct Node<'a> {
    key: Key<'a>,
    value: Value<'a>,
    parent: At,
    /// One past the last value that stands inside this one.
    end: u32,
}

/// A document: every value in the order of the text.
#[derive(Debug, Default)]
pub(crate) struct Document<'a> {
    nodes: Vec<Node<'a>>,
}

impl<'a> Document<'a> {
    pub(crate) fn len(&self) -> usize {
        self.nodes.len()
    }

    /// Adds a value after all the others, inside `parent`; what it holds is added next, then it is
    /// [closed](Document::close).
    pub(crate) fn open(&mut self, parent: At, key: Key<'a>, value: Value<'a>) -> At {
        let at = u32::try_from(self.nodes.len()).unwrap_or(u32::MAX);
        self.nodes.push(Node { key, value, parent, end: at.saturating_add(1) });
        At(at)
    }

    /// Closes a value: all that was added since it was opened stands inside it.
    pub(crate) fn close(&mut self, at: At) {
        let end = u32::try_from(self.nodes.len()).unwrap_or(u32::MAX);
        if let Some(node) = self.nodes.get_mut(at.0 as usize) {
            node.end = end;
        }
    }

    pub(crate) fn value(&self, at: At) -> &Value<'a> {
        self.nodes.get(at.0 as usize).map_or(&Value::Null, |node| &node.value)
    }

    /// The key under which an object holds the value, if an object does.
    pub(crate) fn name(&self, at: At) -> Option<&str> {
        match self.nodes.get(at.0 as usize).map(|node| &node.key) {
            Some(Key::Name(name)) => Some(name),
            _ => None,
        }
    }

    /// The values directly inside a list or an object.
    pub(crate) fn children(&self, at: At) -> impl Iterator<Item = At> {
        let end = self.nodes.get(at.0 as usize).map_or(0, |node| node.end);
        let mut next = at.0.saturating_add(1);
        std::iter::from_fn(move || {
            let node = self.nodes.get(next as usize).filter(|_| next < end)?;
            let child = At(next);
            next = node.end;
            Some(child)
        })
    }

    /// The value that an object holds under a key.
    pub(crate) fn child(&self, at: At, name: &str) -> Option<At> {
        self.children(at).find(|child| self.name(*child) == Some(name))
    }

    /// The value at a path of keys and numbers from another; of what is not there, the nearest value round it.
    pub(crate) fn find(&self, at: At, path: &str) -> At {
        let mut at = at;
        for key in path.split('/').skip(1) {
            let number = key.parse::<usize>().ok();
            let child = self.child(at, key).or_else(|| self.children(at).nth(number?));
            let Some(child) = child else { break };
            at = child;
        }
        at
    }

    /// JSON Pointer (RFC 6901): `/slopes/0/name`; empty for the whole document.
    pub(crate) fn pointer(&self, at: At) -> String {
        let mut keys = Vec::new();
        let mut at = at;
        while let Some(node) = self.nodes.get(at.0 as usize) {
            match &node.key {
                Key::Root => break,
                Key::Index(index) => keys.push(index.to_string()),
                Key::Name(name) => keys.push(name.replace('~', "~0").replace('/', "~1")),
            }
            at = node.parent;
        }
        keys.iter().rev().flat_map(|key| ["/", key]).collect()
    }
}
