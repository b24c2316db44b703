#pragma once
#include <string>
#include <vector>

namespace pinwright::api::cli {

/// What was said on the command line. Empty text and 0 mean: not said.
struct Options {
  // everywhere
  std::string store;
  std::vector<std::string> knowledge;  ///< folders; later ones go over earlier ones
  std::vector<std::string> overlay;    ///< folders laid over them
  bool json = false;

  // which block
  std::string block;  ///< id in the store, or path of a block's JSON file
  int revision = 0;
  int from = 0;
  int to = 0;

  // draft
  std::string kind;
  std::vector<std::string> measures;  ///< NAME=VALUE
  std::string measurements;           ///< file
  std::vector<std::string> ease;      ///< NAME=VALUE
  std::string id;
  std::string name;
  std::string size;
  bool save = false;

  // bodies
  bool list = false;

  // told
  std::string words;
  std::vector<std::string> answers;  ///< sign=present|absent|unknown
  std::vector<std::string> style;    ///< features of the garment
  std::string findings;              ///< file
  std::string wearer;                ///< file
  std::string fabric;                ///< file or id

  // change
  std::vector<std::string> proposals;
  bool together = false;
  bool body = false;
  std::vector<std::string> amounts;
  std::string steps;              ///< file
  std::vector<std::string> step;  ///< "operation key=value ..."
  bool apply = false;
  std::string reason;
  std::string author;
  int if_revision = 0;
  std::string drawing;  ///< file
  std::string output;   ///< file

  // knowledge
  std::string section;
  std::vector<std::string> folders;
  bool strict = false;              ///< remarks count as faults
  std::vector<std::string> tryons;  ///< files of described try-ons
  bool show = false;

  // serve
  int port = 8017;
  std::string address = "127.0.0.1";
  std::string token_file;
};

}  // namespace pinwright::api::cli
