#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "swathe/base.hpp"

// A new job out of the answers to seven questions, or like one of the examples.
// Whoever asks, on a terminal or on a page, only talks.
namespace swathe {

/// What somebody who starts a job is asked.
struct NewJobQuestion {
  std::string asks;     ///< in plain words
  std::string example;  ///< an answer, or several
  std::string usual;    ///< what an empty answer stands for, by the answers before
};

/// The questions in their order, by the answers given so far: an opening goes
/// with one bumper, millimeters with A4.
std::vector<NewJobQuestion> new_job_questions(const std::vector<std::string>& answers = {});

/// The commented job file of these answers, in the order of the questions; an
/// empty one, or one that is left out, is the usual.
///
/// Holds (questions_test.cpp): (1) it reads without a fault, makes, and no rule
/// of the newest season
///   fails; (2) what was not answered is not in it: no number, no title, no
///   brackets
/// Refuses: each answer that is not understood or does not go with those before
/// it, at the line of
///   its question (1 to 7), with an answer that would.
Outcome<std::string> new_job(const std::vector<std::string>& answers);

/// The kinds of jobs there are to start from, by the names of the examples:
/// "hexagon".
std::vector<std::string> job_kinds();

/// A job of that kind, for somebody's own sizes: without title, number and
/// brackets. Refuses: UnknownName, with the nearest and all of them.
Outcome<std::string> new_job_like(std::string_view kind);

}  // namespace swathe
